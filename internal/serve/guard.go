package serve

import (
	"net"
	"net/http"
	"slices"
	"strings"
)

// policy lets the page load what this program serves and nothing else.
const policy = "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// guard answers only requests that read, come from this page or from no page, and
// are for one of the hosts; and marks every answer with the page's policy.
func guard(hosts []string, next http.Handler) http.Handler {
	same := http.NewCrossOriginProtection()
	same.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		fail(w, http.StatusForbidden, problem{Error: "the request comes from another site", Hint: "open the page at the address the program printed"})
	}))
	inner := same.Handler(readOnly(next))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if strings.HasPrefix(r.URL.Path, "/api/") {
			h.Set("Cache-Control", "no-store")
		}
		if !hostAllowed(r.Host, hosts) {
			fail(w, http.StatusMisdirectedRequest, problem{Error: "this program does not answer for that host name",
				Hint: "open the page at the address the program printed, or start it with the host name it shall answer for"})
			return
		}
		inner.ServeHTTP(w, r)
	})
}

// The two addresses that are posted to.
const (
	cancelling = "/api/cancel"
	resuming   = "/api/again"
)

// readOnly refuses what is not a request to read, or to stop a computation and take it
// up again.
func readOnly(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodPost && (r.URL.Path == cancelling || r.URL.Path == resuming) {
			next.ServeHTTP(w, r)
			return
		}
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			fail(w, http.StatusMethodNotAllowed, problem{Error: "only GET and HEAD are answered", Hint: "edit the piece's document; the page follows"})
			return
		}
		next.ServeHTTP(w, r)
	})
}

// hostAllowed reports whether a Host header, with or without port, names this
// machine's loopback or one of hosts. Without this check a page elsewhere could
// point its own name at 127.0.0.1 and read the plan.
func hostAllowed(header string, hosts []string) bool {
	name := header
	if h, _, err := net.SplitHostPort(header); err == nil {
		name = h
	}
	name = strings.ToLower(strings.TrimSuffix(strings.Trim(name, "[]"), "."))
	if name == "localhost" || slices.ContainsFunc(hosts, func(h string) bool { return strings.EqualFold(h, name) }) {
		return true
	}
	ip := net.ParseIP(name)
	return ip != nil && ip.IsLoopback()
}
