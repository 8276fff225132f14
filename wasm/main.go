//go:build js && wasm

// Command wasm is the library in a browser: one function, bytes in, bytes out.
// It holds no arithmetic; it carries a question to answer.Desk and the answer
// back.
//
// It sets globalThis.barrow(verb string, ...docs Uint8Array) Uint8Array and then
// calls globalThis.barrowReady(), if that is a function.
package main

import (
	"syscall/js"

	"example.org/barrow/mix"
	"example.org/barrow/wasm/answer"
)

func main() {
	js.Global().Set("barrow", js.FuncOf(ask(&answer.Desk{})))
	if ready := js.Global().Get("barrowReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {} // the functions live as long as the page
}

// maxDocs bounds what one question carries.
const maxDocs = 2

// ask carries questions to the desk. A panic would end the instance for good, so
// a bug of the program comes back as a problem instead.
func ask(desk *answer.Desk) func(js.Value, []js.Value) any {
	return func(_ js.Value, args []js.Value) (reply any) {
		defer func() {
			if recover() != nil {
				reply = bytesOut(desk.Failed())
			}
		}()
		if len(args) == 0 || args[0].Type() != js.TypeString {
			return bytesOut(desk.Answer(""))
		}
		var docs [][]byte
		for _, arg := range args[1:min(len(args), 1+maxDocs)] {
			docs = append(docs, bytesIn(arg))
		}
		return bytesOut(desk.Answer(args[0].String(), docs...))
	}
}

// bytesIn copies a document in. A job past its bound is refused by its size:
// one byte more says as much.
func bytesIn(v js.Value) []byte {
	if !v.InstanceOf(js.Global().Get("Uint8Array")) {
		return nil
	}
	b := make([]byte, min(v.Length(), mix.MaxBytes+1))
	js.CopyBytesToGo(b, v)
	return b
}

func bytesOut(b []byte) js.Value {
	out := js.Global().Get("Uint8Array").New(len(b))
	js.CopyBytesToJS(out, b)
	return out
}
