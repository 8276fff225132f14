package spell_test

import (
	"fmt"

	"example.org/barrow/units/spell"
)

func ExampleWord() {
	names := []string{"bark-fines", "peat", "perlite"}
	fmt.Printf("%q %q\n", spell.Word("perlit", names), spell.Word("sand", names))
	// Output: "perlite" ""
}

func ExampleDistance() {
	fmt.Println(spell.Distance("perlite", "Perlit", 3), spell.Distance("peat", "sand", 3))
	// Output: 1 3
}
