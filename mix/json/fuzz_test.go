package json_test

import "testing"

func FuzzParse(f *testing.F) {
	seeds := 0
	add := func(doc string) {
		f.Add([]byte(doc))
		seeds++
	}
	for _, doc := range sound {
		add(doc)
	}
	for _, tt := range faulty {
		add(tt.doc)
	}
	if seeds < 100 {
		f.Fatalf("%d seeds; the tables they come from are gone", seeds)
	}
	f.Fuzz(checkAgainstOracle)
}
