//go:build js && wasm

// Command wasm is the library in a browser. It does no arithmetic: it carries a
// question to answer.Session, and the answer back.
//
// It exports three functions, and a question uses all of them. room(i, n) returns
// the address of n bytes, into which the caller writes text i of the question:
// first the verb, then its documents. ask(documents) answers the question and
// returns the length of the answer. answer() returns its address, which is good
// until the next question. Package syscall/js would do the same for 12 kB more of
// a download.
package main

import (
	"unsafe"

	"example.org/barrow/mix/doc"
	"example.org/barrow/wasm/answer"
)

// maxDocs is the most documents in one question.
const maxDocs = 2

var (
	session  answer.Session
	question [1 + maxDocs][]byte
	reply    []byte
)

// room makes room for one text of the next question. A job past its limit is
// refused for its size, and one byte more is enough to show that, so a caller
// never has to write more.
//
//go:wasmexport room
func room(i, size int32) unsafe.Pointer {
	if i < 0 || i > maxDocs || size < 0 || size > doc.MaxBytes+1 {
		return nil
	}
	question[i] = make([]byte, size)
	return unsafe.Pointer(unsafe.SliceData(question[i]))
}

// ask answers the question in the texts. A panic would end the program for good,
// so a bug in it becomes a problem in the answer instead.
//
//go:wasmexport ask
func ask(documents int32) (size int32) {
	defer func() {
		if recover() != nil {
			reply = session.Failed()
			size = int32(len(reply))
		}
	}()
	reply = nil // a reply may be large, and is good only until the next question
	verb, docs := string(question[0]), question[1:1+min(max(documents, 0), maxDocs)]
	reply = session.Answer(verb, docs...)
	clear(question[:]) // a question may be large
	return int32(len(reply))
}

// answered is the address of the reply.
//
//go:wasmexport answer
func answered() unsafe.Pointer { return unsafe.Pointer(unsafe.SliceData(reply)) }

func main() { select {} } // the exported functions must live as long as the page
