package session

import (
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The XDG Base Directory Specification 0.8: $XDG_DATA_HOME, else
// $HOME/.local/share; a path that is not absolute is to be ignored. Apple's File
// System Programming Guide: Library/Application Support. Windows: the known
// folder FOLDERID_LocalAppData, %LOCALAPPDATA%.
func TestDataFolder(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the paths are written for other systems")
	}
	for _, c := range []struct {
		system string
		env    map[string]string
		want   string // "": not known
	}{
		{"linux", map[string]string{"XDG_DATA_HOME": "/data", "HOME": "/me"}, "/data"},
		{"linux", map[string]string{"XDG_DATA_HOME": "data", "HOME": "/me"}, "/me/.local/share"},
		{"linux", map[string]string{"HOME": "/me"}, "/me/.local/share"},
		{"freebsd", map[string]string{"HOME": "/me"}, "/me/.local/share"},
		{"linux", nil, ""},
		{"darwin", map[string]string{"XDG_DATA_HOME": "/data", "HOME": "/me"}, "/me/Library/Application Support"},
		{"darwin", nil, ""},
		{"windows", map[string]string{"LOCALAPPDATA": "/local", "USERPROFILE": "/me"}, "/local"},
		{"windows", map[string]string{"USERPROFILE": "/me"}, "/me/AppData/Local"},
		{"windows", nil, ""},
	} {
		got, ok := dataFolder(c.system, func(name string) string { return c.env[name] })
		assert.Equal(t, c.want != "", ok, c)
		if ok {
			assert.Equal(t, c.want, filepath.ToSlash(got), c)
		}
	}
}
