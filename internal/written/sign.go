package written

import "strings"

// sign is a stitch: how it is called, what it takes of the row below and what it leaves.
type sign struct {
	name    string
	in, out int
}

// signs are stitches by their abbreviations and by names of one word, in small letters. The
// abbreviations are those of the published lists in common use (common practice, from
// memory); what each takes and leaves follows from how it is worked.
var signs = map[string]sign{
	"k": {"k", 1, 1}, "knit": {"k", 1, 1}, "p": {"p", 1, 1}, "purl": {"p", 1, 1},
	"sl": {"sl", 1, 1}, "slip": {"sl", 1, 1}, "ktbl": {"k tbl", 1, 1}, "ptbl": {"p tbl", 1, 1},
	"k1b": {"k tbl", 1, 1}, "k1tbl": {"k tbl", 1, 1}, "p1tbl": {"p tbl", 1, 1},

	"m1": {"M1", 0, 1}, "m1l": {"M1L", 0, 1}, "m1r": {"M1R", 0, 1}, "m1-l": {"M1L", 0, 1}, "m1-r": {"M1R", 0, 1},
	"m1p": {"M1P", 0, 1}, "m1-p": {"M1P", 0, 1}, "m1lp": {"M1P", 0, 1}, "m1rp": {"M1P", 0, 1}, "m1pl": {"M1P", 0, 1}, "m1pr": {"M1P", 0, 1},
	"lli": {"LLI", 0, 1}, "rli": {"RLI", 0, 1}, "yo": {"yo", 0, 1}, "yon": {"yo", 0, 1}, "yrn": {"yo", 0, 1},
	"yfwd": {"yo", 0, 1}, "yfrn": {"yo", 0, 1}, "yoh": {"yo", 0, 1},
	"kfb": {"kfb", 1, 2}, "kf&b": {"kfb", 1, 2}, "pfb": {"pfb", 1, 2}, "pf&b": {"pfb", 1, 2}, "kfbf": {"kfbf", 1, 3},

	"k2tog": {"k2tog", 2, 1}, "k2togtbl": {"k2tog tbl", 2, 1}, "k2tog-tbl": {"k2tog tbl", 2, 1}, "ssk": {"ssk", 2, 1},
	"slip-slip-knit": {"ssk", 2, 1}, "slip-slip-purl": {"ssp", 2, 1}, "skp": {"skp", 2, 1}, "skpo": {"skp", 2, 1}, "s1kp": {"skp", 2, 1},
	"p2tog": {"p2tog", 2, 1}, "p2togtbl": {"p2tog tbl", 2, 1}, "p2tog-tbl": {"p2tog tbl", 2, 1}, "ssp": {"ssp", 2, 1},
	"k3tog": {"k3tog", 3, 1}, "p3tog": {"p3tog", 3, 1}, "k3tog-tbl": {"k3tog tbl", 3, 1}, "sssk": {"sssk", 3, 1},
	"sk2p": {"sk2p", 3, 1}, "sk2po": {"sk2p", 3, 1}, "s2kp": {"s2kp", 3, 1}, "s2kp2": {"s2kp", 3, 1}, "s2kpo": {"s2kp", 3, 1}, "cdd": {"s2kp", 3, 1},
	"sk3p": {"sk3p", 4, 1}, "k4tog": {"k4tog", 4, 1}, "p4tog": {"p4tog", 4, 1},

	"ds": {"ds", 1, 1}, "mds": {"ds", 1, 1}, "k1f&b": {"kfb", 1, 2}, "k1fb": {"kfb", 1, 2}, "p1f&b": {"pfb", 1, 2}, "p1fb": {"pfb", 1, 2},
	"k1-f&b": {"kfb", 1, 2}, "yf": {"yo", 0, 1}, "yfd": {"yo", 0, 1}, "ytf": {"yo", 0, 1}, "k2tog-psso": {"k2tog, psso", 2, 0}, "wfwd": {"yo", 0, 1},
	"psso": {"psso", 0, -1}, "p2sso": {"p2sso", 0, -2}, "passo": {"psso", 0, -1},
}

// phrases are stitches named in several words; where some begin alike the longest stands
// first.
var phrases = byFirst([]phrase{
	{"knit into the front and the back", sign{"kfb", 1, 2}},
	{"knit into the front and back", sign{"kfb", 1, 2}},
	{"knit into front and back", sign{"kfb", 1, 2}},
	{"knit in front and back", sign{"kfb", 1, 2}},
	{"knit front and back", sign{"kfb", 1, 2}},
	{"k into front and back", sign{"kfb", 1, 2}},
	{"k in front and back", sign{"kfb", 1, 2}},
	{"k f & b", sign{"kfb", 1, 2}},
	{"purl into the front and back", sign{"pfb", 1, 2}},
	{"knit one through the back loop", sign{"k tbl", 1, 1}},
	{"purl one through the back loop", sign{"p tbl", 1, 1}},
	{"slip , slip , knit", sign{"ssk", 2, 1}},
	{"slip slip knit", sign{"ssk", 2, 1}},
	{"slip , slip , purl", sign{"ssp", 2, 1}},
	{"slip slip purl", sign{"ssp", 2, 1}},
	{"slip-knit two-pass", sign{"sk2p", 3, 1}},
	{"slip two-knit-pass", sign{"s2kp", 3, 1}},
	{"make one leaning left", sign{"M1L", 0, 1}},
	{"make one leaning right", sign{"M1R", 0, 1}},
	{"make one left", sign{"M1L", 0, 1}},
	{"make one right", sign{"M1R", 0, 1}},
	{"make 1 left", sign{"M1L", 0, 1}},
	{"make 1 right", sign{"M1R", 0, 1}},
	{"make one", sign{"M1", 0, 1}},
	{"make 1", sign{"M1", 0, 1}},
	{"m 1 left", sign{"M1L", 0, 1}},
	{"m 1 right", sign{"M1R", 0, 1}},
	{"m1 left", sign{"M1L", 0, 1}},
	{"m1 right", sign{"M1R", 0, 1}},
	{"m1 l", sign{"M1L", 0, 1}},
	{"m1 r", sign{"M1R", 0, 1}},
	{"m 1", sign{"M1", 0, 1}},
	{"lift one left", sign{"LLI", 0, 1}},
	{"lift one right", sign{"RLI", 0, 1}},
	{"left lifted increase", sign{"LLI", 0, 1}},
	{"right lifted increase", sign{"RLI", 0, 1}},
	{"yarn over", sign{"yo", 0, 1}},
	{"yarn forward", sign{"yo", 0, 1}},
	{"yarn round needle", sign{"yo", 0, 1}},
	{"wl fwd", sign{"yo", 0, 1}},
	{"wl . fwd", sign{"yo", 0, 1}},
	{"yarn fwd", sign{"yo", 0, 1}},
	{"y fwd", sign{"yo", 0, 1}},
	{"wool round needle", sign{"yo", 0, 1}},
	{"wool over needle", sign{"yo", 0, 1}},
	{"yarn over needle", sign{"yo", 0, 1}},
	{"sl1 - k2tog-psso", sign{"sk2p", 3, 1}},
	{"sl 1 - k2tog-psso", sign{"sk2p", 3, 1}},
	{"sl1 - k1 - psso", sign{"skp", 2, 1}},
	{"sl 1 - k1 - psso", sign{"skp", 2, 1}},
	{"sl2 - k1 - p2sso", sign{"s2kp", 3, 1}},
	{"sl1 - k2tog - psso", sign{"sk2p", 3, 1}},
	{"wool forward", sign{"yo", 0, 1}},
	{"pass the slipped stitch over", sign{"psso", 0, -1}},
	{"pass slipped stitch over", sign{"psso", 0, -1}},
	{"pass slipped st over", sign{"psso", 0, -1}},
	{"pass the slipped st over", sign{"psso", 0, -1}},
	{"k twice into next st", sign{"kfb", 1, 2}},
	{"k twice into next stitch", sign{"kfb", 1, 2}},
	{"k twice into the next st", sign{"kfb", 1, 2}},
	{"k twice in next st", sign{"kfb", 1, 2}},
	{"knit twice into next stitch", sign{"kfb", 1, 2}},
	{"knit twice into the next stitch", sign{"kfb", 1, 2}},
	{"p twice into next st", sign{"pfb", 1, 2}},
	{"purl twice into next stitch", sign{"pfb", 1, 2}},
	{"inc in next stitch", sign{"inc", 1, 2}},
	{"inc in next st", sign{"inc", 1, 2}},
	{"inc in first st", sign{"inc", 1, 2}},
	{"inc in last st", sign{"inc", 1, 2}},
	{"increase in next stitch", sign{"inc", 1, 2}},
	{"increase in the next stitch", sign{"inc", 1, 2}},
	{"increase in first stitch", sign{"inc", 1, 2}},
	{"increase in last stitch", sign{"inc", 1, 2}},
})

// phrase is a stitch that is named in several words.
type phrase struct {
	words string
	sign
}

// spelled is a phrase word by word.
type spelled struct {
	words []string
	sign
}

func byFirst(list []phrase) map[string][]spelled {
	by := map[string][]spelled{}
	for _, one := range list {
		words := strings.Fields(one.words)
		by[words[0]] = append(by[words[0]], spelled{words, one.sign})
	}
	return by
}
