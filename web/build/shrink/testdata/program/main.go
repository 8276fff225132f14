// Command program does what leans on the tables that the passes rewrite: it grows
// stacks, collects garbage, unwinds panics, jumps about and switches goroutines.
package main

import (
	"errors"
	"os"
	"runtime"
	"strconv"
)

type node struct {
	left, right *node
	text        string
}

func grow(depth int) *node {
	if depth == 0 {
		return &node{text: strconv.Itoa(depth)}
	}
	var pad [64]int
	pad[depth%64] = depth
	n := &node{left: grow(depth - 1), text: strconv.Itoa(pad[depth%64])}
	if depth%500 == 0 {
		runtime.GC()
	}
	return n
}

func (n *node) sum() (s int) {
	for ; n != nil; n = n.left {
		v, err := strconv.Atoi(n.text)
		if err != nil {
			panic(err)
		}
		s += v
	}
	return s
}

func unwind(depth int) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = errors.Join(err, errors.New(strconv.Itoa(depth)))
			if depth < 40 {
				panic(r)
			}
		}
	}()
	if depth == 0 {
		var none []int
		return errors.New(strconv.Itoa(none[depth]))
	}
	return unwind(depth - 1)
}

// wander jumps about, with calls that give up its turn in every loop.
func wander(steps int) (n int) {
	turn := runtime.Gosched
outer:
	for i := range steps {
		defer func() { n += i }()
		for k := 0; ; k++ {
			switch turn(); {
			case k > 3 && i%7 == 0:
				continue outer
			case k == 6 && i%5 == 0:
				break
			case k > 9:
				runtime.Gosched()
				n += k * i
				continue outer
			case i > 90:
				break outer
			default:
				n ^= k
			}
			if n&1 == 0 || n > 1000 && k%3 == 1 {
				n++
			}
		}
	}
	return n
}

func main() {
	sums := make(chan int)
	for i := range 20 {
		go func() { sums <- grow(1000 + i).sum() }()
		go func() { sums <- wander(80 + i) }()
	}
	all := 0
	for range 40 {
		all += <-sums
	}
	seen := map[string]int{}
	for i := range 10_000 {
		seen[strconv.Itoa(i%997)]++
	}
	os.Stdout.WriteString(strconv.Itoa(all) + " " + strconv.Itoa(len(seen)) + " " + strconv.Quote(errorText(unwind(41))) + "\n")
}

func errorText(err error) string {
	if err == nil {
		return "none"
	}
	return err.Error()
}
