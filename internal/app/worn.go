package app

import "thenar/internal/store"

// maxWorn is the number of mitts whose colours are cached for the shelf, since they
// take all strokes of their charts.
const maxWorn = 512

// wornKey says what the colours of a mitt were read from: after a restore other revisions
// have the same numbers.
type wornKey struct{ restored, revision int64 }

func wornOf(m store.Mitt) wornKey { return wornKey{m.Restored, m.Revision} }
