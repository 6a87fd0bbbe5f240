package serve

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"strings"
)

// kinds are the types of the page's files: the machine's own table may be wrong.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
	".woff2": "font/woff2", ".svg": "image/svg+xml", ".json": "application/json", ".txt": "text/plain; charset=utf-8",
}

// pages serves the built page. Files under assets carry a hash in their name and
// may be kept; the page itself is asked for anew each time.
func pages(files fs.FS, built bool) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name := strings.TrimPrefix(path.Clean(r.URL.Path), "/")
		if name == "" {
			name = "index.html"
		}
		body, err := fs.ReadFile(files, name)
		if err != nil {
			unknown(w, r)
			return
		}
		keep := "no-cache"
		if built && strings.HasPrefix(name, "assets/") {
			keep = "public, max-age=31536000, immutable"
		}
		w.Header().Set("Cache-Control", keep)
		w.Header().Set("Content-Type", kind(name))
		sum := sha256.Sum256(body)
		send(w, r, Snapshot{Version: hex.EncodeToString(sum[:8])}, body)
	})
}

func kind(name string) string {
	ext := path.Ext(name)
	if k, ok := kinds[ext]; ok {
		return k
	}
	if k := mime.TypeByExtension(ext); k != "" {
		return k
	}
	return "application/octet-stream"
}
