package stable_test

import (
	"cmp"
	"fmt"

	"example.org/barrow/mix/stable"
)

func ExampleSort() {
	packs := []string{"peat", "bark", "sand", "grit", "perlite"}
	stable.Sort(packs, func(a, b string) int { return cmp.Compare(len(a), len(b)) })
	fmt.Println(packs)
	// Output: [peat bark sand grit perlite]
}
