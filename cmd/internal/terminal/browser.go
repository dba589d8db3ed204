package terminal

import (
	"errors"
	"os"
	"os/exec"
	"runtime"
)

// OpenBrowser has the system show an address.
func OpenBrowser(address string) error {
	var cmd *exec.Cmd
	switch runtime.GOOS {
	case "windows":
		cmd = exec.Command("rundll32", "url.dll,FileProtocolHandler", address)
	case "darwin":
		cmd = exec.Command("open", address)
	default:
		if os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
			return errors.New("there is no screen here") // it would open one of text in this terminal
		}
		cmd = exec.Command("xdg-open", address)
	}
	if err := cmd.Start(); err != nil {
		return errors.New("the system has no way to open one")
	}
	go func() { _ = cmd.Wait() }() // how it ended is the system's matter
	return nil
}
