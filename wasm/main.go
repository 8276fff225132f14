//go:build js && wasm

// Command wasm is the library in a browser: one function, bytes in, bytes out.
// It holds no arithmetic; it carries a job document to mix.Handle and the
// plan, or the problems, back.
//
// It sets globalThis.barrow(job Uint8Array) Uint8Array and then calls
// globalThis.barrowReady(), if that is a function.
package main

import (
	"syscall/js"

	"example.org/barrow/mix"
)

func main() {
	js.Global().Set("barrow", js.FuncOf(handle))
	if ready := js.Global().Get("barrowReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {} // the functions live as long as the page
}

// handle answers one call. A panic would end the instance for good, so a bug
// of the program comes back as a problem instead.
func handle(_ js.Value, args []js.Value) (reply any) {
	defer func() {
		if recover() != nil {
			reply = bytesOut([]byte(`{"problems":[{"path":"","code":"bug","value":"","hint":"the program failed on this job; please report it"}]}`))
		}
	}()
	var job []byte
	if len(args) == 1 && args[0].InstanceOf(js.Global().Get("Uint8Array")) {
		// A job past its bound is refused by its size: one byte more says as much.
		job = make([]byte, min(args[0].Length(), mix.MaxBytes+1))
		js.CopyBytesToGo(job, args[0])
	}
	return bytesOut(mix.Handle(job))
}

func bytesOut(b []byte) js.Value {
	out := js.Global().Get("Uint8Array").New(len(b))
	js.CopyBytesToJS(out, b)
	return out
}
