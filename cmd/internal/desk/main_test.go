package desk

import (
	"os"
	"testing"

	"fencecard/output/page/browser"
)

func TestMain(m *testing.M) { os.Exit(browser.Shared(m).Run()) }
