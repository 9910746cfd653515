package project

import "thenar/internal/sheet"

// Samples returns mitts of an invented scenario: Marit Aasen teaches an evening
// class and knits the mitts for it. Hands, swatches and names are made up.
func Samples() []Document {
	return []Document{
		{Name: "Marit’s reading mitts", Side: Right, Sheet: sheet.Sheet{
			"kind": "fingerless", "unit": "cm",
			"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10",
			"gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10",
			"gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "true",
			"hand.hand_circumference": "18.6", "hand.wrist_circumference": "15.4", "hand.thumb_circumference": "6.3",
			"hand.hand_length": "17.6", "hand.gusset_length": "6.2", "hand.thumb_length": "6.1", "hand.wrist_to_crotch": "6.4",
			"stitch.rib": "2",
		}},
		{Name: "Mittens for Odd, aged five", Side: Left, Sheet: sheet.Sheet{
			"kind": "mitten", "unit": "cm",
			"gauge.swatches[0].stitches": "20", "gauge.swatches[0].width": "10",
			"gauge.swatches[0].rounds": "28", "gauge.swatches[0].height": "10",
			"gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "true",
			"hand.hand_circumference": "14.5", "hand.thumb_circumference": "4.9", "hand.hand_length": "13",
			"stitch.rib": "2",
		}},
		{Name: "Class sample, 2×2 rib, inches", Side: Right, Sheet: sheet.Sheet{
			"kind": "fingerless", "unit": "in",
			"gauge.swatches[0].stitches": "22", "gauge.swatches[0].width": "4",
			"gauge.swatches[0].rounds": "30", "gauge.swatches[0].height": "4",
			"gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "true",
			"hand.hand_circumference": "8 1/4", "hand.thumb_circumference": "2 3/4", "hand.hand_length": "7 1/2",
			"stitch.rib": "4",
		}},
	}
}
