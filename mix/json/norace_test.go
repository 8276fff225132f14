//go:build !race

package json_test

const racing = false
