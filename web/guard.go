package web

import (
	"net"
	"net/http"
	"strconv"
	"strings"
)

// policy allows only what comes from this server: no inline scripts or styles,
// no fonts of others, no frames, no forms that post elsewhere.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guard stands before every route. It refuses a foreign Host, since a page on
// the web can point its own name at this machine; refuses writes and background
// requests that another site makes; and sets the headers of every response.
func guard(door Door, next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	protected := origin.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY") // for browsers that don't know frame-ancestors
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if ours(r.Host) { // without https, browsers ignore it on other hosts
			h.Set("Cross-Origin-Opener-Policy", "same-origin")
		}
		h.Set("Cache-Control", "no-store")
		if !ours(r.Host) && (door.Key == "" || !near(r.Host)) {
			http.Error(w, "This address is not one of Thenar's. Open it as http://127.0.0.1 with its port.", http.StatusMisdirectedRequest)
			return
		}
		if setOff(r.Header) {
			http.Error(w, "Another site’s page asked for this. Open it from Thenar’s own pages, or by a link.", http.StatusForbidden)
			return
		}
		protected.ServeHTTP(w, r)
	})
}

// setOff reports whether a page of another site made this request without a
// person following a link: by a picture, a frame, a script. That page could not
// read the response, but it could keep the server busy.
//
// The headers are those of Fetch Metadata Request Headers (W3C); a browser
// sends none to an address of the local network without https. A frame counts
// as navigation, too, so the destination must be a document as well. So does a
// page fetched ahead (Speculation Rules, WICG), which gives its purpose (Fetch
// standard; Purpose in older browsers).
func setOff(h http.Header) bool {
	switch h.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return false
	}
	ahead := h.Get("Sec-Purpose") != "" || h.Get("Purpose") != ""
	return ahead || h.Get("Sec-Fetch-Mode") != "navigate" || h.Get("Sec-Fetch-Dest") != "document"
}

// ours reports whether a Host header names this machine.
func ours(host string) bool {
	name := named(host)
	ip := net.ParseIP(name)
	return name == "localhost" || ip != nil && ip.IsLoopback()
}

// named returns the name in a Host header, without its port, or "" if the port
// is not a number.
func named(host string) string {
	name, port, err := net.SplitHostPort(host)
	if err != nil {
		return strings.Trim(host, "[]")
	}
	if _, err := strconv.ParseUint(port, 10, 16); err != nil {
		return ""
	}
	return name
}
