package fault

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestKindsAndMessages(t *testing.T) {
	cause := errors.New("disk on fire at /secret/path")
	err := func() (err error) {
		defer Wrap(&err, "store.Save(%d)", 7)
		return New(Conflict, "saved in between").Because(cause)
	}()
	assert.Equal(t, Conflict, KindOf(err))
	assert.Equal(t, "saved in between", Message(err), "the cause is not shown")
	assert.ErrorIs(t, err, cause)
	assert.Equal(t, "store.Save(7): saved in between: disk on fire at /secret/path", err.Error())

	assert.Equal(t, Internal, KindOf(cause))
	assert.NotContains(t, Message(cause), "secret")

	var none error
	Wrap(&none, "nothing")
	assert.NoError(t, none)
}

func TestFields(t *testing.T) {
	var f Fields
	assert.NoError(t, f.Err())
	f.Add("hand.thumb_circumference", "is %d mm", 200)
	f.Add("length.cuff", "is zero")
	assert.Equal(t, Invalid, KindOf(fmt.Errorf("plan: %w", f.Err())))
	assert.Equal(t, []string{"hand.thumb_circumference: is 200 mm", "length.cuff: is zero"}, f.Lines())
	assert.Equal(t, "hand.thumb_circumference: is 200 mm\nlength.cuff: is zero", Message(f.Err()))
	assert.True(t, f.Has("length.cuff"))
	assert.False(t, f.Has("length"))
}
