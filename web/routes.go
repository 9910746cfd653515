package web

import (
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/parcel"
	"thenar/internal/photo"
	"thenar/internal/roster"
	"thenar/static"
)

// The most bytes that a form and a chart's strokes may have.
const (
	mostForm  = 1 << 18
	mostChart = 4 << 20
	mostTry   = photo.Most + mostForm
	mostTable = roster.Largest + mostForm

	mostParcel = parcel.Largest + mostForm
)

func (s *Server) routes() http.Handler {
	r := chi.NewRouter()
	r.Get("/", s.answer(s.shelf))
	r.Post("/mitts", s.answer(limited(mostForm, s.newMitt)))
	r.Route("/mitts/{id}", func(r chi.Router) {
		r.Get("/", s.answer(s.showMitt))
		r.Post("/", s.answer(limited(mostForm, s.saveMitt)))
		r.Post("/preview", s.answer(limited(mostForm, s.preview)))
		r.Post("/copy", s.answer(limited(mostForm, s.copyMitt)))
		r.Post("/name", s.answer(limited(mostForm, s.renameMitt)))
		r.Post("/archive", s.answer(limited(mostForm, s.archiveMitt)))
		r.Get("/chart", s.answer(s.showChart))
		r.Post("/chart", s.answer(limited(mostChart, s.saveChart)))
		r.Get("/chart/events", s.answer(s.listen))
		r.Get("/history", s.answer(s.showHistory))
		r.Post("/history", s.answer(limited(mostForm, s.nameMoment)))
		r.Get("/history/{revision}", s.answer(s.showMoment))
		r.Post("/history/{revision}", s.answer(limited(mostForm, s.bringBack)))
		r.Get("/chart.svg", s.answer(s.heavy(s.export("image/svg+xml", ".svg", writeChartPicture))))
		r.Get("/chart.png", s.answer(s.heavy(s.export("image/png", ".png", writeChartDots))))
		r.Get("/chart.csv", s.answer(s.heavy(s.export("text/csv; charset=utf-8; header=absent", ".csv", writeChartTable))))
		r.Get("/words.txt", s.answer(s.export("text/plain; charset=utf-8", ".txt", writeWords)))
		r.Get("/what-if", s.answer(s.showWhatIf))
		r.Post("/what-if", s.answer(limited(mostForm, s.saveWhatIf)))
		r.Post("/what-if/preview", s.answer(limited(mostForm, s.previewWhatIf)))
		r.Post("/what-if/take", s.answer(limited(mostForm, s.takeWhatIf)))
		r.Post("/what-if/copy", s.answer(limited(mostForm, s.copyWhatIf)))
		r.Post("/what-if/drop", s.answer(limited(mostForm, s.dropWhatIf)))
		r.Get("/needles", s.answer(s.showNeedles))
		r.Post("/needles", s.answer(limited(mostForm, s.saveNeedles)))
		r.Get("/tries", s.answer(s.showTries))
		r.Post("/tries", s.answer(limited(mostTry, s.addTry)))
		r.Get("/tries/{try}", s.answer(s.showTry))
		r.Post("/tries/{try}", s.answer(limited(mostForm, s.answerTry)))
		r.Post("/tries/{try}/back", s.answer(limited(mostForm, s.takeBack)))
		r.Post("/second", s.answer(limited(mostForm, s.chooseSecond)))
		r.Post("/tries/{try}/aside", s.answer(limited(mostForm, s.setAside)))
		r.Get("/tries/{try}/photo", s.answer(s.showPhoto))
		r.Post("/habits", s.answer(limited(mostForm, s.useHabits)))
		r.Post("/habits/{zone}/remove", s.answer(limited(mostForm, s.removeHabit)))
		r.Get("/print", s.answer(s.heavy(s.printMitt)))
		r.Post("/print", s.answer(limited(mostForm, s.keepPrint)))
		r.Get("/print.pdf", s.answer(s.heavy(s.printMitt)))
		r.Post("/sure", s.answer(limited(mostForm, s.answerMitt)))
		for _, ending := range []string{"", ".pdf"} {
			r.Get("/wall"+ending, s.answer(s.heavy(s.printWall)))
			r.Get("/sizes"+ending, s.answer(s.heavy(s.printSizes)))
		}
		r.Get("/sheet.json", s.answer(s.sheetJSON))
		r.Get("/export.json", s.answer(s.heavy(s.exportMitt)))
	})
	r.Get("/classes", s.answer(s.showClasses))
	r.Post("/classes", s.answer(limited(mostForm, s.newClass)))
	r.Route("/classes/{class}", func(r chi.Router) {
		r.Get("/", s.answer(s.showClass))
		r.Post("/", s.answer(limited(mostForm, s.saveClass)))
		r.Post("/pattern", s.answer(limited(mostForm, s.choosePattern)))
		r.Post("/archive", s.answer(limited(mostForm, s.archiveClass)))
		r.Post("/table", s.answer(limited(mostTable, s.readTable)))
		r.Post("/table/take", s.answer(limited(mostForm, s.takeNew)))
		r.Post("/students", s.answer(limited(mostForm, s.addStudent)))
		r.Get("/students/{student}", s.answer(s.showStudent))
		r.Post("/students/{student}", s.answer(limited(mostForm, s.saveStudent)))
		r.Post("/students/{student}/move", s.answer(limited(mostForm, s.moveStudent)))
		r.Post("/students/{student}/sure", s.answer(limited(mostForm, s.answerStudent)))
		r.Post("/students/{student}/remove", s.answer(limited(mostForm, s.removeStudent)))
		r.Get("/print", s.answer(s.heavy(s.printClass)))
		r.Post("/print", s.answer(limited(mostForm, s.keepClassPrint)))
		r.Get("/print.pdf", s.answer(s.heavy(s.printClass)))
		r.Get("/export.json", s.answer(s.heavy(s.exportClass)))
	})
	for _, ending := range []string{"", ".pdf"} {
		r.Get("/paper/measure"+ending, s.answer(s.heavy(s.printMeasuring)))
		r.Get("/paper/ruler"+ending, s.answer(s.heavy(s.printRuler)))
		r.Get("/paper/grid"+ending, s.answer(s.heavy(s.printGrid)))
	}
	r.Get("/motifs", s.answer(s.showMotifs))
	r.Post("/motifs", s.answer(limited(mostChart, s.keepMotif)))
	r.Post("/motifs/{motif}/remove", s.answer(limited(mostForm, s.removeMotif)))
	r.Get("/status", s.answer(s.status))
	r.Post("/status/backup", s.answer(limited(mostForm, s.backupNow)))
	r.Post("/status/check", s.answer(limited(mostForm, s.checkNow)))
	r.Post("/status/devices/out", s.answer(limited(mostForm, s.letAllOut)))
	r.Post("/status/devices/{device}/out", s.answer(limited(mostForm, s.letOut)))
	r.Post("/status/devices/{device}/name", s.answer(limited(mostForm, s.nameDevice)))
	r.Get("/export.json", s.answer(s.heavy(s.exportAll)))
	r.Post("/import", s.answer(limited(mostParcel, s.importFile)))
	r.Get("/import", http.RedirectHandler("/status#move", http.StatusSeeOther).ServeHTTP)
	r.Get("/static/{version}/*", serveStatic)
	r.NotFound(s.answer(func(http.ResponseWriter, *http.Request) error {
		return fault.New(fault.NotFound, "There is no page at this address.")
	}))
	r.MethodNotAllowed(func(w http.ResponseWriter, _ *http.Request) {
		http.Error(w, "This address does not take that.", http.StatusMethodNotAllowed)
	})
	return r
}

// limited bounds the body that h may read.
func limited(most int64, h handler) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		r.Body = http.MaxBytesReader(w, r.Body, most)
		return h(w, r)
	}
}

// serveStatic serves style sheets and scripts. Their address changes with
// them, so a browser may keep them; under another version's address they are
// served too, but not kept.
func serveStatic(w http.ResponseWriter, r *http.Request) {
	if chi.URLParam(r, "version") == static.Version {
		w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	name := chi.URLParam(r, "*")
	if strings.HasSuffix(name, "/") || name == "" {
		http.NotFound(w, r)
		return
	}
	http.ServeFileFS(w, r, static.FS, name)
}
