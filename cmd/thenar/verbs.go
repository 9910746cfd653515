package main

// defaultVerb is the verb of a command line without one.
const defaultVerb = "serve"

// verbs is filled in init, since the verbs refer to it for their help.
var verbs []verb

func init() {
	verbs = []verb{
		{
			name: "serve", args: "[-listen 127.0.0.1:8420] [-db FILE] [-new-key]",
			does:    "serves the app on this machine; what thenar does without a verb",
			example: "thenar serve -listen 127.0.0.1:8421 -db mitts.db",
			run:     serve,
		},
		{
			name: "plan", args: "[-lines] [-brief] FILE",
			does:    "works out the plan of a measure sheet, as JSON; - is standard input",
			example: "thenar plan sheet.json",
			run:     plan,
		},
		{
			name:    "shape",
			args:    "-from N -to N -rounds N [-step 2] [-gap 2] [-lead-in 0] [-lead-out 1] [-lambda 8] [-first N] [-quicken] [-target a,b,c…]",
			does:    "finds the exact schedule of increases or decreases over rounds",
			example: "thenar shape -from 3 -to 15 -step 2 -rounds 19 -first 1",
			run:     shape,
		},
		{
			name: "evenly", args: "-stitches N (-increase K or -decrease K) [-flat] [-with m1, kfb or k2tog]",
			does:    "spaces increases or decreases evenly over a round or a row",
			example: "thenar evenly -stitches 38 -increase 6",
			run:     evenly,
		},
		{
			name: "words", args: "[-left] FILE",
			does:    "prints the written instructions of a measure sheet or an exported mitt",
			example: "thenar words sheet.json",
			run:     printWords,
		},
		{
			name: "chart", args: "[-format svg or csv] [-section gusset] [-left] FILE",
			does:    "prints the chart of a measure sheet or an exported mitt, as a picture or as a table",
			example: "thenar chart -format csv sheet.json",
			run:     printChart,
		},
		{
			name: "handout", args: "[-pdf] [-paper a4 or letter] [-large] [-grey] [-sideways] [-cell mm] [-pieces LIST] [-dir DIR] [-db FILE] ID",
			does:    "prints the handout of a mitt as SVG pages or as a PDF; ID as in the address of its page",
			example: "thenar handout -pdf 1 > handout.pdf",
			run:     printHandout,
		},
		{
			name: "class", args: "[-pdf] [-student N] [-double] [-paper a4 or letter] [-large] [-grey] [-sideways] [-cell mm] [-pieces LIST] [-dir DIR] [-db FILE] ID",
			does:    "prints the class set: the teacher's summary and every student's handout, as SVG pages or as a PDF",
			example: "thenar class -pdf -double 1 > class.pdf",
			run:     printClass,
		},
		{
			name: "export", args: "[-db FILE] ID",
			does:    "writes a mitt with its whole history as JSON; classes/2 for a class, all for everything",
			example: "thenar export 7 > mitt-7.json",
			run:     export,
		},
		{
			name: "import", args: "[-db FILE] FILE",
			does:    "takes in what was exported, and doubles nothing that is here already; - is standard input",
			example: "thenar import mitt-7.json",
			run:     importFile,
		},
		{
			name: "backup", args: "[-db FILE] FILE",
			does:    "copies the whole database to a new file, also while the app serves; - is standard output",
			example: "thenar backup thenar-2026.db",
			run:     backup,
		},
		{
			name: "restore", args: "[-db FILE] FILE",
			does:    "puts a backup in the place of the database, also while the app serves; what was there is kept",
			example: "thenar restore thenar-2026.db",
			run:     restore,
		},
		{
			name: "demo", args: "[-db FILE]",
			does:    "fills a new database with the sample mitts",
			example: "thenar demo -db samples.db",
			run:     demo,
		},
	}
}
