package main

// defaultVerb is the verb of a command line without one.
const defaultVerb = "serve"

// verbs is filled in init, since the verbs refer to it for their help.
var verbs []verb

func init() {
	verbs = []verb{
		{
			name: "serve", args: "[-listen 127.0.0.1:8420] [-db FILE] [-new-key]",
			does:    "opens the app on this computer; so does thenar by itself",
			example: "thenar serve -listen 127.0.0.1:8421 -db mitts.db",
			run:     serve,
		},
		{
			name: "plan", args: "[-lines] [-brief] FILE",
			does:    "works out the plan of a measure sheet, as JSON. - reads standard input",
			example: "thenar plan sheet.json",
			run:     plan,
		},
		{
			name: "grade", args: "[-lines, -words or -pdf] [-rounds] [-right or -left] [-title NAME] [-paper a4 or letter] [-large] [-each] FILE",
			does:    "works out every size of a design, and what one text for all of them costs, as JSON. -words writes that text for both hands, -pdf its pages. -right or -left is for that hand alone. - reads standard input",
			example: "thenar grade design.json",
			run:     gradeDesign,
		},
		{
			name: "check", args: "[-json] [-gauge 24/32] [-ball 50/175] [-sheet] [-chart svg, png or csv] [-against CHART.csv] [-size NAME] [-section NAME] FILE",
			does:    "works written instructions stitch by stitch, every size by itself, and tells where a count does not come out. - reads standard input",
			example: "thenar check pattern.txt",
			run:     check,
		},
		{
			name:    "shape",
			args:    "-from N -to N -rounds N [-step 2] [-gap 2] [-lead-in 0] [-lead-out 1] [-lambda 8] [-first N] [-quicken] [-only odd or even] [-target a,b,c…]",
			does:    "finds in which rounds to increase or decrease",
			example: "thenar shape -from 3 -to 15 -step 2 -rounds 19 -first 1",
			run:     shape,
		},
		{
			name: "evenly", args: "-stitches N (-increase K or -decrease K) [-flat] [-with m1, kfb or k2tog]",
			does:    "spreads increases or decreases evenly over a round or a row",
			example: "thenar evenly -stitches 38 -increase 6",
			run:     evenly,
		},
		{
			name: "words", args: "[-left] FILE",
			does:    "writes out the instructions of a measure sheet, or of a mitt saved as a file",
			example: "thenar words sheet.json",
			run:     printWords,
		},
		{
			name: "chart", args: "[-format svg or csv] [-section gusset] [-boxed] [-left] FILE",
			does:    "draws the chart of a measure sheet, or of a mitt saved as a file",
			example: "thenar chart -format csv sheet.json",
			run:     printChart,
		},
		{
			name: "handout", args: "[-pdf] [-double] [-paper a4 or letter] [-large] [-grey] [-sideways] [-cell mm] [-pieces LIST] [-dir DIR] [-db FILE] ID",
			does:    "lays out the handout of a mitt as SVG pages, or as a PDF. ID is the number in its address",
			example: "thenar handout -pdf 1 > handout.pdf",
			run:     printHandout,
		},
		{
			name: "class", args: "[-pdf] [-student N] [-double] [-paper a4 or letter] [-large] [-grey] [-sideways] [-cell mm] [-pieces LIST] [-dir DIR] [-db FILE] ID",
			does:    "lays out your summary of a class and every student's handout, as SVG pages or as a PDF",
			example: "thenar class -pdf -double 1 > class.pdf",
			run:     printClass,
		},
		{
			name: "export", args: "[-db FILE] ID",
			does:    "saves a mitt with all that was earlier as JSON. classes/2 saves a class, all everything",
			example: "thenar export 7 > mitt-7.json",
			run:     export,
		},
		{
			name: "import", args: "[-db FILE] FILE",
			does:    "takes in a file that export wrote, and doubles nothing that is here. - reads standard input",
			example: "thenar import mitt-7.json",
			run:     importFile,
		},
		{
			name: "backup", args: "[-db FILE] FILE",
			does:    "copies all that is kept to a new file, also while the app runs. - writes to standard output",
			example: "thenar backup thenar-2026.db",
			run:     backup,
		},
		{
			name: "restore", args: "[-db FILE] FILE",
			does:    "puts a backup back, also while the app runs. What stood there is kept",
			example: "thenar restore thenar-2026.db",
			run:     restore,
		},
		{
			name: "demo", args: "[-db FILE]",
			does:    "puts the sample mitts on an empty shelf",
			example: "thenar demo -db samples.db",
			run:     demo,
		},
	}
}
