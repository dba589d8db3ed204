package shelf_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"fencecard/cmd/internal/shelf"
)

func Example() {
	folder, err := os.MkdirTemp("", "shelf")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)
	path := filepath.Join(folder, "book.txt")
	for _, line := range []string{"one\n", "two\n"} {
		err := shelf.Update(context.Background(), path, func(old []byte) ([]byte, error) {
			return append(old, line...), nil
		})
		if err != nil {
			fmt.Println(err)
		}
	}
	now, _ := os.ReadFile(path)
	before, _ := os.ReadFile(path + shelf.BackupEnding)
	fmt.Printf("%q, before that %q\n", now, before)
	// Output: "one\ntwo\n", before that "one\n"
}
