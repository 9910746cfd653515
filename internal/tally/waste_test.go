package tally

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is said of stitches that are knitted with waste yarn and again is no other stitch, and what
// comes after it is.
func TestWasteYarnAndAgain(t *testing.T) {
	for _, round := range []string{
		"k2, knit 3 with waste yarn and again with the working yarn, knit one through the back loop, k14",
		"k2, k3 with waste yarn, slip these 3 sts back to the left needle and knit them again, slip 1 with yarn in back, k14",
		"k2, then with scrap yarn k3; return these sts to left needle, knit 3 again with MC, k to end",
	} {
		assert.Empty(t, worked("CO 20 sts.\nRnd 1: "+round+". 20 sts.\nBO 20 sts.\nThumb\nRemove the waste yarn and place the 3 sts below and 2 sts above on needles. 5 sts.\nBO.").Findings, round)
	}
}
