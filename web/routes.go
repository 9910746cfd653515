package web

import (
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/static"
	"thenar/web/view"
)

// The most bytes in each kind of request body.
const (
	maxForm  = 1 << 18
	maxChart = 4 << 20
	maxTry   = app.MaxPhoto + maxForm
	maxTable = app.MaxTable + maxForm

	maxRemarks = 8 << 20 // the longest notes of the largest class, before and after

	maxImport = app.MaxExport + maxForm
)

func (s *Server) routes() http.Handler {
	r := chi.NewRouter()
	r.Get("/", s.answer(s.shelf))
	r.Post("/mitts", s.answer(limited(maxForm, s.newMitt)))
	r.Route("/mitts/{id}", func(r chi.Router) {
		r.Get("/", s.answer(s.toDesk))
		r.Get("/desk/{desk}", s.answer(s.showDesk))
		r.Post("/", s.answer(limited(maxForm, s.saveMitt)))
		r.Post("/preview", s.answer(limited(maxForm, s.preview)))
		r.Post("/copy", s.answer(limited(maxForm, s.copyMitt)))
		r.Post("/begin", s.answer(limited(maxForm, s.beginFrom)))
		r.Post("/repeats", s.answer(limited(maxForm, s.layMotif)))
		r.Post("/repeats/{at}", s.answer(limited(maxForm, s.changeRepeat)))
		r.Get("/yarns", s.answer(s.showPalettes))
		r.Post("/yarns", s.answer(limited(maxForm, s.bringYarns)))
		r.Post("/name", s.answer(limited(maxForm, s.renameMitt)))
		r.Post("/hand", s.answer(limited(maxForm, s.showHand)))
		r.Post("/archive", s.answer(limited(maxForm, s.archiveMitt)))
		r.Get("/chart", s.answer(s.showChart))
		r.Post("/chart", s.answer(limited(maxChart, s.saveChart)))
		r.Get("/chart/events", s.answer(s.listen))
		r.Get("/history", s.answer(s.showHistory))
		r.Post("/history", s.answer(limited(maxForm, s.nameMoment)))
		r.Get("/history/{revision}", s.answer(s.showMoment))
		r.Post("/history/{revision}", s.answer(limited(maxForm, s.bringBack)))
		r.Get("/chart.svg", s.answer(s.heavy(s.downloadChart("image/svg+xml", app.SVG))))
		r.Get("/chart.png", s.answer(s.heavy(s.downloadChart("image/png", app.PNG))))
		r.Get("/chart.pdf", s.answer(s.heavy(s.downloadChart("application/pdf", app.PDF))))
		r.Get("/chart.csv", s.answer(s.heavy(s.downloadChart("text/csv; charset=utf-8; header=absent", app.CSV))))
		r.Get("/words.txt", s.answer(s.downloadWords()))
		r.Get("/what-if", s.answer(s.showWhatIf))
		r.Post("/what-if", s.answer(limited(maxForm, s.saveWhatIf)))
		r.Post("/what-if/preview", s.answer(limited(maxForm, s.previewWhatIf)))
		r.Post("/what-if/take", s.answer(limited(maxForm, s.takeWhatIf)))
		r.Post("/what-if/copy", s.answer(limited(maxForm, s.copyWhatIf)))
		r.Post("/what-if/drop", s.answer(limited(maxForm, s.dropWhatIf)))
		r.Get("/needles", s.answer(s.leadNeedles))
		r.Post("/needles", s.answer(limited(maxForm, s.saveNeedles)))
		r.Get("/strips", s.answer(s.heavy(s.showStrips)))
		r.Get("/tries", s.answer(lead(view.TryDesk)))
		r.Post("/tries", s.answer(limited(maxTry, s.addTry)))
		r.Get("/tries/{try}", s.answer(s.showTry))
		r.Post("/tries/{try}", s.answer(limited(maxForm, s.answerTry)))
		r.Post("/tries/{try}/back", s.answer(limited(maxForm, s.takeBack)))
		r.Post("/second", s.answer(limited(maxForm, s.chooseSecond)))
		r.Post("/tries/{try}/aside", s.answer(limited(maxForm, s.setAside)))
		r.Get("/tries/{try}/photo", s.answer(s.showPhoto))
		r.Post("/habits", s.answer(limited(maxForm, s.useHabits)))
		r.Post("/habits/{zone}/remove", s.answer(limited(maxForm, s.removeHabit)))
		r.Get("/print", s.answer(lead(view.PatternDesk)))
		r.Get(view.DesignBelow, s.answer(s.heavy(s.showDesign)))
		r.Post(view.DesignBelow, s.answer(s.heavy(limited(maxForm, s.saveDesign))))
		r.Post(view.DesignBelow+"/fill", s.answer(s.heavy(limited(maxForm, s.fillDesign))))
		r.Post(view.DesignBelow+"/list", s.answer(s.heavy(limited(maxForm, s.listDesign))))
		r.Post(view.DesignBelow+"/photo", s.answer(limited(maxTry, s.addPhoto)))
		r.Post(view.DesignBelow+"/photo/move", s.answer(limited(maxForm, s.movePhoto)))
		r.Get(view.DesignBelow+"/photo/{name}", s.answer(s.showPicture))
		r.Post(view.DesignBelow+"/texts", s.answer(s.heavy(limited(maxForm, s.savePatternTexts))))
		r.Get(view.DesignBelow+"/check", s.answer(s.heavy(s.checkPattern)))
		r.Get(view.VersionsBelow, s.answer(s.heavy(s.showVersions)))
		r.Post(view.VersionsBelow, s.answer(s.heavy(limited(maxForm, s.sendVersion))))
		r.Get(view.VersionsBelow+"/{number}", s.answer(s.heavy(s.showSince)))
		r.Get(view.VersionsBelow+"/{number}/errata.txt", s.answer(s.heavy(s.downloadErrata)))
		r.Get(view.SentencesBelow, s.answer(s.heavy(s.showSentences)))
		r.Post(view.SentencesBelow, s.answer(s.heavy(limited(maxForm, s.saveSentences))))
		r.Get(view.DesignBelow+"/hand/{size}", s.answer(s.heavy(s.showSize)))
		r.Post(view.DesignBelow+"/class", s.answer(s.heavy(limited(maxForm, s.classDesign))))
		r.Get(view.DesignBelow+"/print.pdf", s.answer(s.heavy(s.printPattern)))
		for _, kind := range []string{app.PlainText, app.Markdown, app.HTML} {
			r.Get(view.DesignBelow+"/words."+kind, s.answer(s.heavy(s.downloadPattern(kind))))
		}
		r.Post(view.DesignBelow+"/open", s.answer(s.heavy(limited(maxForm, s.openSize))))
		r.Get("/sheets", s.answer(s.heavy(s.showSheets)))
		r.Post("/print", s.answer(limited(maxForm, s.keepPrint)))
		r.Get("/print.pdf", s.answer(s.heavy(s.printMitt)))
		r.Post("/sure", s.answer(limited(maxForm, s.answerMitt)))
		for _, ending := range []string{"", ".pdf"} {
			r.Get("/wall"+ending, s.answer(s.heavy(s.printWall)))
			r.Get("/sizes"+ending, s.answer(s.heavy(s.printSizes)))
		}
		r.Get("/sheet.json", s.answer(s.sheetJSON))
		r.Get("/export.json", s.answer(s.heavy(s.exportMitt)))
	})
	r.Get("/classes", s.answer(s.showClasses))
	r.Post("/classes", s.answer(limited(maxForm, s.newClass)))
	r.Route("/classes/{class}", func(r chi.Router) {
		r.Get("/", s.answer(s.showClass))
		r.Post("/", s.answer(limited(maxForm, s.saveClass)))
		r.Post("/pattern", s.answer(limited(maxForm, changed("#table", s.choosePattern))))
		r.Post("/archive", s.answer(limited(maxForm, s.archiveClass)))
		r.Post("/table", s.answer(limited(maxTable, s.readTable)))
		r.Post("/table/take", s.answer(limited(maxForm, s.takeNew)))
		r.Post("/remarks", s.answer(limited(maxRemarks, s.saveRemarks)))
		r.Get("/cost", s.answer(s.heavy(s.countSheets)))
		r.Post("/students", s.answer(limited(maxForm, s.addStudent)))
		r.Get("/students/{student}", s.answer(s.showStudent))
		r.Post("/students/{student}", s.answer(limited(maxForm, s.saveStudent)))
		r.Post("/students/{student}/sure", s.answer(limited(maxForm, s.answerStudent)))
		r.Post("/students/{student}/remove", s.answer(limited(maxForm, changed("#table", s.removeStudent))))
		r.Get("/print", s.answer(s.heavy(s.printClass)))
		r.Post("/print", s.answer(limited(maxForm, changed("/print", s.keepClassPrint))))
		r.Get("/print.pdf", s.answer(s.heavy(s.printClass)))
		r.Get("/export.json", s.answer(s.heavy(s.exportClass)))
	})
	for _, ending := range []string{"", ".pdf"} {
		r.Get("/paper/measure"+ending, s.answer(s.heavy(s.printMeasuring)))
		r.Get("/paper/ruler"+ending, s.answer(s.heavy(s.printRuler)))
		r.Get("/paper/grid"+ending, s.answer(s.heavy(s.printGrid)))
	}
	r.Get("/check", s.answer(s.showCheck))
	r.Post("/check", s.answer(s.heavy(limited(maxCheck, s.checkText))))
	r.Post("/check/chart.svg", s.answer(s.heavy(limited(maxCheck, s.sendRead("image/svg+xml", app.SVG)))))
	r.Post("/check/chart.csv", s.answer(s.heavy(limited(maxCheck, s.sendRead("text/csv; charset=utf-8; header=absent", app.CSV)))))
	r.Post("/check/mitt", s.answer(s.heavy(limited(maxCheck, s.openWritten))))
	r.Get("/motifs", s.answer(s.showMotifs))
	r.Post("/motifs", s.answer(limited(maxChart, s.keepMotif)))
	r.Post("/motifs/{motif}/remove", s.answer(limited(maxForm, s.removeMotif)))
	r.Get("/status", s.answer(s.status))
	r.Post("/status/backup", s.answer(limited(maxForm, s.backupNow)))
	r.Post("/status/check", s.answer(limited(maxForm, s.checkNow)))
	r.Post("/status/devices/out", s.answer(limited(maxForm, s.letAllOut)))
	r.Post("/status/devices/{device}/out", s.answer(limited(maxForm, s.letOut)))
	r.Post("/status/devices/{device}/name", s.answer(limited(maxForm, s.nameDevice)))
	r.Get("/export.json", s.answer(s.heavy(s.exportAll)))
	r.Post("/import", s.answer(limited(maxImport, s.importFile)))
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
func limited(maxBytes int64, h handler) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		r.Body = http.MaxBytesReader(w, r.Body, maxBytes)
		return h(w, r)
	}
}

// serveStatic serves style sheets, scripts and fonts. Their address contains the
// version, so a browser may cache them for good; under the address of another
// version they are served, but not cached.
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
