package session

import (
	"bufio"
	"bytes"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What takes its time is told to whoever sits before a terminal, once; nothing is
// told to a file, nor of what is done sooner. A test that hangs here has failed.
func TestBusy(t *testing.T) {
	read, write := io.Pipe()
	a := &Session{Err: write, Watched: true}
	done := a.Busy("looking")
	line, err := bufio.NewReader(read).ReadString('\n')
	require.NoError(t, err)
	assert.Equal(t, "looking\n", line)
	done()

	var told bytes.Buffer
	a.Err = &told
	a.Busy("looking")()
	(&Session{Err: &told}).Busy("looking")()
	(&Session{Err: &told, Watched: true, Quiet: true}).Busy("looking")()
	assert.Empty(t, told.String())
}
