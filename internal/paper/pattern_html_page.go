package paper

import "html/template"

// patternTemplate is the page of a pattern.
var patternTemplate = template.Must(template.New("pattern").Funcs(template.FuncMap{"odd": func(i int) bool { return i%2 == 1 }}).Parse(`<!DOCTYPE html>
<html lang="{{.Language}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Name}}</title>
{{if .Designer}}<meta name="author" content="{{.Designer}}">
{{end}}<style>{{.Style}}</style>
</head>
<body>
<header>
<h1>{{.Name}}</h1>
{{if .About}}<p class="about">{{.About}}</p>
{{end}}{{if .Designer}}<p class="designer">{{.Designer}}</p>
{{end}}{{template "figure" .Cover}}
{{range .Stories}}<p>{{.}}</p>
{{end}}</header>
<nav aria-label="Contents">
<ul>
<li><a href="#sizes">Sizes</a></li>
<li><a href="#needs">{{.Text.Head.Needs.Title}}</a></li>
<li><a href="#signs">Abbreviations</a></li>
<li><a href="#measures">Measurements</a></li>
{{if .Told}}<li><a href="#notes">Notes</a></li>
{{end}}{{range .Sections}}<li><a href="#{{.ID}}">{{.Title}}</a></li>
{{end}}<li><a href="#numbers">Every number, to tick off</a></li>
</ul>
</nav>
<main>
<section id="sizes">
<h2>Sizes</h2>
{{template "by-size" .Table}}
</section>
<section id="needs">
<h2>{{.Text.Head.Needs.Title}}</h2>
<dl>
{{range .Needs}}<dt>{{index . 0}}</dt><dd>{{index . 1}}</dd>
{{end}}</dl>
</section>
<section id="signs">
<h2>Abbreviations</h2>
<dl>
{{range .Text.Head.Signs}}<dt>{{.Sign}}</dt><dd>{{.Line}}</dd>
{{end}}</dl>
</section>
<section id="measures">
<h2>Measurements</h2>
{{range .Figures}}{{template "figure" .}}
{{end}}{{template "by-size" .Measured}}
</section>
{{if .Told}}<section id="notes">
<h2>Notes</h2>
{{range .Told}}<p>{{.}}</p>
{{end}}</section>
{{end}}{{range .More}}{{template "figure" .}}
{{end}}{{range .Sections}}<section id="{{.ID}}">
<h2>{{.Title}}</h2>
{{range .Lines}}{{if .Table}}{{template "changes" .Table}}
{{else if .Under}}<ul class="under">
{{range .Under}}<li>{{template "runs" .}}</li>
{{end}}</ul>
{{else}}<p>{{template "runs" .Runs}}</p>
{{end}}{{end}}</section>
{{end}}<section id="numbers">
<h2>Every number, to tick off</h2>
{{template "by-size" .Listed}}
</section>
</main>
<footer>
<p>{{.Caution}}</p>
{{if .Ends}}<p>{{.Ends}}</p>
{{end}}</footer>
</body>
</html>
{{define "figure"}}<figure>{{.Body}}{{if .Caption}}<figcaption>{{.Caption}}</figcaption>{{end}}</figure>{{end}}
{{define "runs"}}{{range $i, $run := .}}{{if odd $i}}<b>{{$run}}</b>{{else}}{{$run}}{{end}}{{end}}{{end}}
{{define "by-size"}}<div class="wide" tabindex="0" role="region" aria-label="{{.Label}}"><table class="sizes">
<thead><tr><th scope="col">size</th>{{range .Sizes}}<th scope="col">{{.}}</th>{{end}}</tr></thead>
<tbody>
{{range .Rows}}<tr><th scope="row">{{.Name}}</th>{{range .Values}}<td>{{.}}</td>{{end}}</tr>
{{end}}</tbody>
</table></div>{{end}}
{{define "changes"}}<div class="wide" tabindex="0" role="region" aria-label="{{.Label}}"><table class="changes">
<thead>
<tr><td></td>{{range .Over}}<th scope="colgroup" colspan="{{.Span}}">{{.Title}}</th>{{end}}</tr>
<tr><th scope="col">{{.What}}</th>{{range .Heads}}<th scope="col">{{.}}</th>{{end}}</tr>
</thead>
<tbody>
{{range .Rows}}<tr>{{range $i, $cell := .}}{{if $i}}<td>{{$cell}}</td>{{else}}<th scope="row">{{$cell}}</th>{{end}}{{end}}</tr>
{{end}}</tbody>
</table></div>{{end}}`))

// patternStyle is the look of the page, on a screen and in print.
const patternStyle = `
:root { color-scheme: light; }
body { max-width: 46rem; margin: 0 auto; padding: 1.5rem; background: #fff; color: #1d1a16; font: 1.0625rem/1.5 "Source Sans 3", system-ui, sans-serif; }
h1, h2 { font-family: "Source Serif 4", Georgia, serif; line-height: 1.2; }
h1 { font-size: 2.75rem; margin: 0; }
h2 { font-size: 1.4rem; margin: 2rem 0 .5rem; }
.about { font-size: 1.25rem; margin: .25rem 0; }
.designer { font-weight: 600; }
figure { margin: 1rem 0; break-inside: avoid; }
figure svg, figure img { display: block; max-width: 100%; max-height: 32rem; height: auto; }
figcaption { font-size: .9375rem; color: #564f45; }
nav ul { columns: 16rem; padding: 0; list-style: none; }
nav a { color: #2b4a78; display: inline-block; padding: .2rem 0; }
.wide { overflow-x: auto; break-inside: avoid; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { padding: .15rem .5rem; text-align: right; border-bottom: 1px solid #8a8378; font-weight: 400; }
tbody th, thead tr:last-child th:first-child { text-align: left; padding-left: 0; }
thead th { font-weight: 600; background: #e0e0e0; }
thead td { border: 0; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; }
dt { font-weight: 600; }
dd { margin: 0; }
p { margin: .5rem 0; }
.under { margin: .25rem 0 .5rem; padding-left: 1.75rem; list-style: none; }
footer { margin-top: 2rem; font-size: .9375rem; }
@media (max-width: 30rem) { body { padding: 1rem; } dl { grid-template-columns: 1fr; } dd { margin: 0 0 .4rem; } }
@media print { body { max-width: none; padding: 0; font-size: 11pt; } nav { display: none; } h2 { break-after: avoid; } .wide { overflow: visible; } }
@page { margin: 15mm; }
`
