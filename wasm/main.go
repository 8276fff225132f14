//go:build js && wasm

// Command wasm is the library in a browser. It holds no arithmetic; it carries a
// question to answer.Session and the answer back.
//
// It exports three functions, and a call takes all of them: room(i, n) gives the
// address of n bytes for the caller to write the i-th text of a question into,
// the verb and then its documents; ask(documents) answers with how many bytes
// there are to read; and answer() with their address, good until the next call.
// Package syscall/js would do the same for 12 kB more of a download.
package main

import (
	"unsafe"

	"example.org/barrow/mix/doc"
	"example.org/barrow/wasm/answer"
)

// maxDocs bounds what one question carries.
const maxDocs = 2

var (
	session  answer.Session
	question [1 + maxDocs][]byte
	reply    []byte
)

// room makes place for one text of the next question. A job past its bound is
// refused by its size: one byte more says as much, and the caller writes no more.
//
//go:wasmexport room
func room(i, size int32) unsafe.Pointer {
	if i < 0 || i > maxDocs || size < 0 || size > doc.MaxBytes+1 {
		return nil
	}
	question[i] = make([]byte, size)
	return unsafe.Pointer(unsafe.SliceData(question[i]))
}

// ask answers the question that the texts make. A panic would end the instance
// for good, so a bug of the program comes back as a problem instead.
//
//go:wasmexport ask
func ask(documents int32) (size int32) {
	defer func() {
		if recover() != nil {
			reply = session.Failed()
			size = int32(len(reply))
		}
	}()
	verb, docs := string(question[0]), question[1:1+min(max(documents, 0), maxDocs)]
	reply = session.Answer(verb, docs...)
	clear(question[:]) // what was asked may be large
	return int32(len(reply))
}

// answer is where the reply lies.
//
//go:wasmexport answer
func answered() unsafe.Pointer { return unsafe.Pointer(unsafe.SliceData(reply)) }

func main() { select {} } // the functions live as long as the page
