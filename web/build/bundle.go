package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// bundle makes one small file of a script or a style sheet and all that it
// imports. The result imports nothing, so that it can stand in a file or inside
// the page. A warning is an error: a build is right or it is not made.
func bundle(entry, loader string, define map[string]string) ([]byte, error) {
	result := api.Build(api.BuildOptions{
		EntryPoints:       []string{entry},
		AbsWorkingDir:     filepath.Dir(entry),
		Outdir:            filepath.Dir(entry), // nothing is written there
		Bundle:            true,
		Format:            api.FormatIIFE,
		Platform:          api.PlatformBrowser,
		Target:            api.ES2024,
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
		Charset:           api.CharsetUTF8,
		LegalComments:     api.LegalCommentsEndOfFile,
		Define:            define,
		LogLevel:          api.LogLevelSilent,
		TsconfigRaw:       "{}", // nothing of the folders above
		Plugins:           []api.Plugin{loaderPlugin(loader)},
	})
	var all []error
	for _, m := range append(result.Errors, result.Warnings...) {
		all = append(all, errors.New(said(m)))
	}
	if len(all) > 0 {
		return nil, errors.Join(all...)
	}
	if len(result.OutputFiles) != 1 {
		return nil, fmt.Errorf("%s makes %d files, want 1", entry, len(result.OutputFiles))
	}
	return result.OutputFiles[0].Contents, nil
}

// loaderPlugin finds Go's loader for the script that imports it.
func loaderPlugin(loader string) api.Plugin {
	found := func(api.OnResolveArgs) (api.OnResolveResult, error) { return api.OnResolveResult{Path: loader}, nil }
	return api.Plugin{Name: "loader", Setup: func(b api.PluginBuild) {
		b.OnResolve(api.OnResolveOptions{Filter: `^\./wasm_exec\.js$`}, found)
	}}
}

// said is a message of the bundler on one line: where, and what.
func said(m api.Message) string {
	var b strings.Builder
	if l := m.Location; l != nil {
		fmt.Fprintf(&b, "%s:%d: ", l.File, l.Line)
	}
	b.WriteString(m.Text)
	return b.String()
}
