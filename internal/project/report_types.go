package project

import (
	"thenar/internal/gauge"
	"thenar/internal/mitt"
)

// report is a plan as JSON. The schema in testdata/plan.schema.json says what each
// key means. Lengths are in mm and not rounded.
type report struct {
	Format  string         `json:"format"`
	Kind    string         `json:"kind"`
	Made    reportMade     `json:"made"`
	Gauge   reportGauge    `json:"gauge"`
	Ease    reportEase     `json:"ease"`
	Cuff    reportCuff     `json:"cuff"`
	Hand    reportHand     `json:"hand"`
	Gusset  *reportGusset  `json:"gusset"` // null without a thumb, as are bridge and thumb
	Bridge  *reportBridge  `json:"bridge"`
	Thumb   *reportThumb   `json:"thumb"`
	Opening *reportOpening `json:"opening,omitempty"` // for the thumb, in place of it
	Top     *reportTop     `json:"top"`
	Fingers *reportFingers `json:"fingers,omitempty"` // of a glove only, as are the next two
	Bridges *reportBridges `json:"bridges,omitempty"`

	LowerRounds *int       `json:"little_lower_rounds,omitempty"`
	Cap         *reportCap `json:"cap,omitempty"`

	Residuals reportResiduals `json:"residuals_mm"`
	Yarn      reportYarn      `json:"yarn"`
	Filled    []reportFilled  `json:"filled"`
	Warnings  []reportWarning `json:"warnings"`
	Pins      []reportPin     `json:"pins"`
	Repeats   []reportRepeat  `json:"repeats,omitempty"` // motifs, of a sheet with any
}

type reportGauge struct {
	Stitches     float64       `json:"stitches_per_mm"`
	Rounds       float64       `json:"rounds_per_mm"`
	RoundsFilled bool          `json:"rounds_filled"`
	StitchHalf   float64       `json:"stitches_half_interval"`
	RoundHalf    float64       `json:"rounds_half_interval"`
	Treated      bool          `json:"in_the_round_and_washed"`
	Swatches     []gauge.Use   `json:"swatches"`
	Queries      []gauge.Query `json:"queries"`
}

type reportEase struct {
	Hand       float64 `json:"hand"`
	Cuff       float64 `json:"cuff"`
	ThumbAdded float64 `json:"thumb_girth_added_mm"`
}

type reportCuff struct {
	CastOn int `json:"cast_on"`
	Rounds int `json:"rounds"`
	Plain  int `json:"plain_rounds"`
	// Of a gauntlet only.
	Wrist     int   `json:"wrist_stitches,omitempty"`
	Edge      int   `json:"edge_rounds,omitempty"`
	Decreases []int `json:"decrease_rounds,omitempty"`
}

type reportHand struct {
	Stitches       int `json:"stitches"`
	RoundsAbove    int `json:"rounds_above_gusset"`
	EdgingRounds   int `json:"edging_rounds"`
	EdgingStitches int `json:"edging_stitches"`

	RoundsToThumb int      `json:"rounds_to_thumb,omitempty"` // without a gusset
	MoundStretch  *float64 `json:"mound_stretch,omitempty"`
}

// reportOpening is an opening for the thumb, worked to and fro.
type reportOpening struct {
	Rows int `json:"rows"`
	Edge int `json:"edge_stitches"`
}

type reportGusset struct {
	Base           int         `json:"base"`
	Rounds         int         `json:"rounds"`
	IncreaseRounds []int       `json:"increase_rounds"`
	Counts         []int       `json:"counts"`
	Stitches       int         `json:"stitches"`
	KeptOnHand     int         `json:"kept_on_hand"`
	Cost           float64     `json:"cost"`
	Words          string      `json:"words"`
	Ways           []reportWay `json:"ways"`
}

// reportWay is a schedule that could be chosen, measured against the hand's own
// shape.
type reportWay struct {
	Follows mitt.Follow `json:"follows"`
	Fixed   bool        `json:"fixed"`
	Rounds  []int       `json:"increase_rounds"`
	Cost    float64     `json:"cost"`
	Mean    float64     `json:"mean_mm"`
	Worst   float64     `json:"worst_mm"`
	Changes int         `json:"rhythm_changes"`
}

// reportPin is a fixed number and what it costs. Free is null if there is no plan
// without it.
type reportPin struct {
	Field   string         `json:"field"`
	Value   string         `json:"value"`
	Free    *string        `json:"free"`
	MM      float64        `json:"cost_mm"`
	Changes []reportChange `json:"changes"`
}

type reportChange struct {
	Place string  `json:"place"`
	With  float64 `json:"with_mm"`
	Free  float64 `json:"free_mm"`
}

type reportBridge struct {
	CastOn    int `json:"cast_on"`
	HandAfter int `json:"hand_stitches_after"`
}

type reportThumb struct {
	Held           int `json:"held"`
	PickedUp       int `json:"picked_up"`
	FirstRound     int `json:"stitches_in_first_round"`
	Decreased      int `json:"decreased"`
	Stitches       int `json:"stitches"`
	Rounds         int `json:"rounds"`
	EdgingRounds   int `json:"edging_rounds"`
	EdgingStitches int `json:"edging_stitches"`
}

type reportTop struct {
	Stitches       int    `json:"stitches"`
	Rounds         int    `json:"rounds"`
	DecreaseRounds []int  `json:"decrease_rounds"`
	End            int    `json:"stitches_at_end"`
	Words          string `json:"words"`
}

type reportResiduals struct {
	Hand         float64 `json:"hand"`
	Thumb        float64 `json:"thumb"`
	GussetLength float64 `json:"gusset_length"`
	Crotch       float64 `json:"crotch"`
	// Of a glove only.
	Index  *float64 `json:"index,omitempty"`
	Middle *float64 `json:"middle,omitempty"`
	Ring   *float64 `json:"ring,omitempty"`
	Little *float64 `json:"little,omitempty"`
}

// reportFilled is a value that was not given. A length is in MM; any other number
// (an ease, rounds over 10 cm) is in Value.
type reportFilled struct {
	Field  string   `json:"field"`
	MM     *float64 `json:"mm,omitempty"`
	Value  *float64 `json:"value,omitempty"`
	From   string   `json:"from"`
	Source string   `json:"source"`
}

type reportWarning struct {
	Code    string `json:"code"`
	Message string `json:"message"`
}
