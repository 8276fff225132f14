/*
Package shrink makes a Go program's WebAssembly smaller to send, and changes
nothing of what the program does.

A program goes through five passes. What each saves of barrow.wasm in brotli 11,
alone and in its turn, 765,366 bytes as Go 1.26.8 links it with the page's flags
and 536,211 after all of them:

	pass      alone   in its turn
	segments  67,594  67,594       runs of zeros in memory no longer start a segment each
	symtab    -       80,448       the names, files and lines of functions are gone
	jumps     45,973  48,987       jumps forward skip the table of a function's blocks
	frame      9,663   8,206       a load or store adds its place in the frame itself
	address   24,623  23,920       a function has the high part of its return addresses once

Alone, symtab has nothing to read: a table of functions lies in many segments until
they are joined. Measure it again with TestSavings, which prints this table:

	go test ./web/build/shrink -run TestSavings -v -savings

# What it knows

The passes know what the compiler, the assembler, the linker and the runtime of Go
1.26 write for js/wasm (cmd/internal/obj/wasm, cmd/link/internal/wasm,
runtime/symtab.go, internal/abi/symtab.go). Each looks for what it needs before it
changes anything:

All of them want a module whose section "producers" names Go as the language.

segments wants one memory, which is the program's own; segments that lie at fixed
addresses, none over another; and no section that counts them.

symtab wants Go 1.26 itself, since the numbers of a function's lists are nowhere in
a program. It wants one header of a table of functions (magic 0xfffffff1, words of
8 bytes), the parts in their order, and every function where the list has it, with
as many lists as are known and tables of positions that end.

jumps, frame and address want type 0 to take and to return one number of 32 bits,
code with no instruction but those known (code.go), and functions that read global 0
into local 1 first of all. A function that does not is left as it is, such as those
that the runtime has in assembly with parameters of their own.

jumps wants in each function a loop, the row of blocks and the table read from local
0, a number put into local 0 before every way back to the loop, and no other use of
that local.

frame wants global 0 to be the stack pointer: getsp, which the loader calls, must
return it. And in each function local 1 must be set from it, or together with it.

address wants a number of 32 bits as the first local, and two constants or more that
are the function's own number with 16 bits after it.

# A newer Go

Where a program is not as a pass knows it, the pass leaves all of it alone and says
why; the build prints that below its table of sizes. Nothing is guessed: the page
still works, and its download is larger by what the pass would have saved. A release
of Go that only moves a function or adds an instruction is such a case.

web/build/README.md says what to look at and to change then.
*/
package shrink
