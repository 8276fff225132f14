package qr_test

import (
	"fmt"

	"example.org/barrow/wasm/qr"
)

func ExamplePath() {
	size, path, ok := qr.Path("https://example.org/")
	fmt.Println(size, string(path[:9]), ok)
	// Output: 33 M4 4h7v1h true
}
