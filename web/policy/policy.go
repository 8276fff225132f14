// Package policy writes the page's content security policies: what a browser
// may load and run for it. Whatever is not named here is refused.
package policy

import (
	"crypto/sha256"
	"encoding/base64"
	"strings"
)

// Page is the policy that index.html carries in itself, so that any host of
// files serves it. All it needs lies beside it.
func Page() string {
	return join(
		"default-src 'none'",
		"script-src 'self' 'wasm-unsafe-eval'",
		"style-src 'self'",
		"img-src 'self'",
		"connect-src 'self'",
		"worker-src 'self'",
		"manifest-src 'self'",
		"base-uri 'none'",
		"form-action 'none'",
	)
}

// Served is the page's policy as a header, which alone can forbid that another
// page frames it.
func Served() string { return join(Page(), Framed()) }

// Framed is the header beside a file that carries a whole policy of its own.
func Framed() string { return "frame-ancestors 'none'" }

// Single is the policy of the page in one file, which runs these scripts and
// styles and no other, and its worker from a blob. It connects to nothing.
func Single(scripts, styles []string) string {
	return join(
		"default-src 'none'",
		"script-src "+hashes(scripts)+" 'wasm-unsafe-eval'",
		"style-src "+hashes(styles),
		"img-src data:",
		"worker-src blob:",
		"base-uri 'none'",
		"form-action 'none'",
	)
}

// Hash names a text, as a policy and an integrity attribute write it.
func Hash(text []byte) string {
	sum := sha256.Sum256(text)
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

func hashes(texts []string) string {
	var out []string
	for _, t := range texts {
		out = append(out, "'"+Hash([]byte(t))+"'")
	}
	return strings.Join(out, " ")
}

func join(directives ...string) string { return strings.Join(directives, "; ") }
