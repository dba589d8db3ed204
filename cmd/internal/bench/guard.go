package bench

import (
	"context"
	"net"
	"net/http"
	"strings"
)

// What may reach the page: requests to its own address alone (a name that a
// stranger's site turned into this address is none), and changes from its own
// pages alone. On the shared site, those besides who were let in by a key.

// visitor is who asks.
type visitor struct {
	shared  bool
	address string // of the site: "127.0.0.1:20123"
}

type visitorKey struct{}

func visiting(r *http.Request) visitor {
	v, _ := r.Context().Value(visitorKey{}).(visitor)
	return v
}

// cookie is the name of a cookie of this site: browsers do not tell ports apart.
func (v visitor) cookie(name string) string {
	_, port, _ := net.SplitHostPort(v.address)
	return "fencecard-" + name + "-" + port
}

// policy allows a page what it brings itself.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

func (s *Server) guard(address string, shared bool, next http.Handler) http.Handler {
	v := visitor{shared, address}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if r.Host != address || !ownOrigin(r, address) {
			refuse(w, "This is not the address of the bench page.")
			return
		}
		if shared {
			if key, is := strings.CutPrefix(r.URL.Path, letPath); is && r.Method == http.MethodGet {
				s.letIn(w, r, v, key)
				return
			}
			if !s.keys.knows(cookieOf(r, v.cookie("key"))) {
				refuse(w, "This device is not let in. Scan the code that the desk shows, or type the address beside it.")
				return
			}
		}
		next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), visitorKey{}, v)))
	})
}

// ownOrigin reports whether a request comes from a page of the site, which all
// must say that could change anything.
func ownOrigin(r *http.Request, address string) bool {
	origin := r.Header.Values("Origin")
	switch {
	case len(origin) > 1:
		return false
	case len(origin) == 1:
		return origin[0] == "http://"+address
	}
	return r.Method == http.MethodGet || r.Method == http.MethodHead
}

func cookieOf(r *http.Request, name string) string {
	c, err := r.Cookie(name)
	if err != nil {
		return ""
	}
	return c.Value
}

func setCookie(w http.ResponseWriter, name, value string) {
	http.SetCookie(w, &http.Cookie{Name: name, Value: value, Path: "/", MaxAge: 7 * 24 * 3600, HttpOnly: true, SameSite: http.SameSiteStrictMode})
}

// refuse answers a stranger, who is told nothing of the work.
func refuse(w http.ResponseWriter, says string) { sorry(w, http.StatusForbidden, says) }
