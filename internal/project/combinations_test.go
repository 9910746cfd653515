package project

import (
	"errors"
	"maps"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/testenv"
)

// combination is one way to make a mitt, by the keys of a sheet.
type combination map[string]string

// combinations lists every combination of construction, place, edges, increase,
// direction, rows, kind and cuff. What says how a gusset grows is a choice of a
// gusset only, and the place one of a thumb.
func combinations() []combination {
	list := []combination{{}}
	each := func(path string, values ...string) {
		var next []combination
		for _, c := range list {
			how := c[mitt.PathConstruction]
			if how != "gusset" && (path == "stitch.both_edges" || path == mitt.PathIncrease || path == mitt.PathPlace && how != "straight") {
				next = append(next, c)
				continue
			}
			for _, v := range values {
				one := maps.Clone(c)
				one[path] = v
				next = append(next, one)
			}
		}
		list = next
	}
	each("kind", "fingerless", "mitten", "glove")
	each(mitt.PathConstruction, "gusset", "straight", "slit", "none")
	each(mitt.PathPlace, "side", "palm")
	each("stitch.both_edges", "true", "false")
	each(mitt.PathIncrease, "m1", "lifted", "yo_closed", "kfb", "centre")
	each(mitt.PathDirection, "up", "down")
	each(mitt.PathFlat, "false", "true")
	each(mitt.PathCuff, "rib", "hem", "garter", "rolled", "gauntlet")
	return list
}

// refusedAt returns the field at which a combination is refused for good, or "".
func (c combination) refusedAt() string {
	how, down := c[mitt.PathConstruction], c[mitt.PathDirection] == "down"
	switch {
	case c["kind"] == "glove" && (how == "slit" || how == "none"), c["kind"] == "mitten" && how == "slit":
		return mitt.PathConstruction
	case c["kind"] == "glove" && down, down && (how == "slit" || how == "straight"):
		return mitt.PathDirection
	case c["kind"] == "glove" && c[mitt.PathFlat] == "true":
		return mitt.PathFlat
	case c[mitt.PathIncrease] == "centre" && c["stitch.both_edges"] == "false", down && how == "gusset" && c[mitt.PathIncrease] != "m1":
		return mitt.PathIncrease
	}
	return ""
}

// Every combination is planned for random hands, and then its words read back agree
// with chart and plan on both hands; or it is refused at its field, with the nearest
// choice that is not.
func TestEveryCombination(t *testing.T) {
	list := combinations()
	const shards = 4
	counts := [shards]struct{ made, refused, hands int }{}
	t.Run("all", func(t *testing.T) {
		for shard := range shards {
			t.Run("", func(t *testing.T) {
				t.Parallel()
				rng, pl, n := rand.New(rand.NewPCG(23, uint64(shard))), NewPlanner(), &counts[shard]
				for i := shard; i < len(list); i += shards {
					c := list[i]
					if at := c.refusedAt(); at != "" {
						requireRefusedAt(t, pl, c.sheet(rng), at)
						n.refused++
						continue
					}
					n.made++
					if !testenv.Long() && n.made%3 > 0 { // a third of them in a short run
						continue
					}
					for range testenv.Cases(1, 200) {
						d := Document{Name: "any", Sheet: c.sheet(rng)}
						readBack(t, pl, d, nil, i)
						n.hands++
					}
				}
			})
		}
	})
	sum := counts[0]
	for _, n := range counts[1:] {
		sum.made, sum.refused, sum.hands = sum.made+n.made, sum.refused+n.refused, sum.hands+n.hands
	}
	t.Logf("%d combinations on two hands each: %d made, for %d random hands; %d refused", len(list), sum.made, sum.hands, sum.refused)
	assert.Equal(t, 630, sum.made, "without the hand these are 630")
}

// A gauntlet from the wrist without plain rounds above it: its first round brings the hand
// to the wrist's stitches, and what is told of its increases agrees with the rest.
func TestGauntletAtOnce(t *testing.T) {
	rng, pl, told := rand.New(rand.NewPCG(23, 9)), NewPlanner(), 0
	for i := range testenv.Cases(12, 200) {
		c := combination{"kind": []string{"fingerless", "mitten"}[i%2], mitt.PathConstruction: "gusset", mitt.PathDirection: "down", mitt.PathCuff: "gauntlet"}
		d := Document{Name: "any", Sheet: c.sheet(rng)}
		d.Sheet["pins.cuff_plain_rounds"] = "0"
		readBack(t, pl, d, nil, i)
		out, err := pl.Derive(d, nil)
		require.NoError(t, err)
		if strings.Contains(instructions(t, out), "brings the stitches to the wrist’s") {
			told++
		}
	}
	assert.Greater(t, told, 2)
}

// sheet returns a sheet of a random hand, without fixed numbers, that is made in this
// way.
func (c combination) sheet(rng *rand.Rand) sheet.Sheet {
	s := anySheet(rng)
	for path := range s {
		if strings.HasPrefix(path, "pins.") || strings.HasPrefix(path, "thumb.") || strings.HasPrefix(path, "cuff.") || path == "stitch.both_edges" {
			delete(s, path)
		}
	}
	maps.Copy(s, c)
	return s
}

// requireRefusedAt asks for a fault at a field, and that the choice that it offers is
// not refused there any more.
func requireRefusedAt(t *testing.T, pl *Planner, s sheet.Sheet, path string) {
	t.Helper()
	_, err := pl.Plan(s)
	var fields fault.Fields
	require.True(t, errors.As(err, &fields) && fields.Has(path), "%v: %v", s, err)
	for _, f := range fields {
		if f.Path == path {
			require.NotEmpty(t, f.Works, "%v", f)
			s = s.Clone()
			s[path] = f.Works
		}
	}
	_, err = pl.Plan(s)
	var again fault.Fields
	require.False(t, errors.As(err, &again) && again.Has(path), "%s offers %v: %v", path, fields, err)
}
