package sheet

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// A sheet of very many unknown keys is told some of them, and that there are
// more; a fault behind them is told, too.
func TestVeryManyUnknownKeys(t *testing.T) {
	var b strings.Builder
	for i := range 2000 {
		fmt.Fprintf(&b, `"k%d": {"x": 1}, `, i)
	}
	_, err := Parse([]byte("{" + b.String() + `"unit": 7}`))
	var faults fault.Fields
	require.True(t, errors.As(err, &faults))
	assert.Len(t, faults, maxStrange+2)
	assert.Equal(t, "k0", faults[0].Path)
	assert.Contains(t, faults[maxStrange].String(), "has more keys")
	assert.Equal(t, PathUnit, faults[maxStrange+1].Path)
}
