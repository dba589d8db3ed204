package yamlfile_test

import (
	"fmt"
	"log"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/yamlfile"
)

// What a value means is said by whoever asks for it: here a name and a length.
func ExampleFile_Fields() {
	f := yamlfile.New("shop.yaml", measure.Inches, measure.InchScale)
	root := f.Tree([]byte("bit: quarter\ndiameter: 1/4\ncuting: 3/4\n"), "the shop file", "")
	bit := f.Fields(root, "this bit", []string{"bit", "diameter", "cutting"})
	fmt.Println(bit.Name("bit"), measure.InchScale.Say(bit.Positive("diameter")))
	fmt.Println(f.Err())
	// Output:
	// quarter 1/4 in
	// shop.yaml:3:1: this bit has no key "cuting"
	//     cuting: 3/4
	//     ^
	//   write cutting
}

// Which bytes a value takes is told with it, so that it can be changed and all else left.
func ExampleReadWritten() {
	plan := "title: Stool # for the hall\npieces:\n  - {piece: leg, count: 4}\n"
	w, err := yamlfile.ReadWritten("stool.yaml", []byte(plan))
	if err != nil {
		log.Fatal(err)
	}
	count := w.Value("pieces").Items[0].Value("count")
	fmt.Print(plan[:count.From] + "3" + plan[count.To:])
	// Output:
	// title: Stool # for the hall
	// pieces:
	//   - {piece: leg, count: 3}
}
