//go:build race

package sure_test

const racing = true
