package bench

import (
	"crypto/sha256"
	"net/http"
	"strings"
	"sync"
)

// letPath is where a device brings its key.
const letPath = "/in/"

// keys are the key of the next device, and the cookies of those that were let
// in. A key lets one device in, once. All end with the program.
type keys struct {
	lock    sync.Mutex
	next    [sha256.Size]byte
	known   map[[sha256.Size]byte]struct{}
	address string
	letting func(address string)
}

func (k *keys) open(address string, letting func(string)) {
	k.lock.Lock()
	defer k.lock.Unlock()
	k.address, k.letting, k.known = address, letting, map[[sha256.Size]byte]struct{}{}
	k.renew()
}

// renew makes the next key and says by which address it is brought.
func (k *keys) renew() {
	key := secret()
	k.next = sha256.Sum256([]byte(key))
	if k.letting != nil {
		k.letting("http://" + k.address + letPath + key)
	}
}

// knows reports whether a cookie is one of those that were given. Digests are
// looked up, so that the time it takes tells nothing of a secret.
func (k *keys) knows(cookie string) bool {
	k.lock.Lock()
	defer k.lock.Unlock()
	_, known := k.known[sha256.Sum256([]byte(cookie))]
	return known
}

// spend takes the key and returns the cookie for it, "" for a wrong key.
func (k *keys) spend(key string) string {
	k.lock.Lock()
	defer k.lock.Unlock()
	if k.known == nil || sha256.Sum256([]byte(key)) != k.next {
		return ""
	}
	cookie := secret()
	k.known[sha256.Sum256([]byte(cookie))] = struct{}{}
	k.renew()
	return cookie
}

// letIn takes a key for a cookie. It answers with a page that goes on by itself,
// not with a redirect: a browser that followed a link from elsewhere would not
// send the new cookie along with that.
func (s *Server) letIn(w http.ResponseWriter, r *http.Request, v visitor, key string) {
	for _, header := range []string{"Sec-Purpose", "Purpose", "X-Moz"} {
		if strings.Contains(r.Header.Get(header), "prefetch") {
			refuse(w, "Not before somebody asks for it.") // a look ahead must not spend the key
			return
		}
	}
	if !s.keys.knows(cookieOf(r, v.cookie("key"))) {
		cookie := s.keys.spend(key)
		if cookie == "" {
			refuse(w, "This key was used, or is of another start of the program. The desk shows the one of now.")
			return
		}
		setCookie(w, v.cookie("key"), cookie)
	}
	writeHTML(w, http.StatusOK, ownPage("in.html"), nil)
}
