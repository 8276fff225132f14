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
