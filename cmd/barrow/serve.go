package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strconv"
	"syscall"
	"time"

	"github.com/spf13/cobra"
)

// usualPort is where the page is served without --port. It stays the same from
// day to day, because a browser keeps jobs by address.
const usualPort = 9273

// pageBuilder is the program that builds the page.
const pageBuilder = "example.org/barrow/web/build"

func (a *app) serveCommand() *cobra.Command {
	var dir string
	var port uint16
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "the page, for a browser on this machine",
		Long: `Serves the page to browsers on this machine, and to no other, until ctrl-C.

The page is the one in --dir, or else the one in ./dist. In a clone of the
repository that has neither, the go tool builds one for as long as it is served.

A browser keeps jobs by address: the same port shows the same jobs.`,
		Example: `  barrow serve
  barrow serve --dir dist --port 8080`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("%q belongs to no flag: a folder goes after --dir", args[0])
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, _ []string) error {
			ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			dir, done, err := a.pageFolder(ctx, dir)
			if ctx.Err() != nil {
				return nil // stopped before the page was ready
			}
			if err != nil {
				return err
			}
			defer done()
			listener, err := listen(port, cmd.Flags().Changed("port"))
			if err != nil {
				return err
			}
			return a.serve(ctx, listener, dir)
		},
	}
	cmd.Flags().Uint16Var(&port, "port", usualPort, "`N`, the port to serve at; 0 is any free one")
	cmd.Flags().StringVar(&dir, "dir", "", "`FOLDER` that the page was built into")
	cmd.MarkFlagDirname("dir")
	return cmd
}

// serve serves a folder until the context ends.
func (a *app) serve(ctx context.Context, listener net.Listener, dir string) error {
	server := &http.Server{Handler: host{dir}, ReadHeaderTimeout: 10 * time.Second,
		IdleTimeout: 2 * time.Minute, ErrorLog: log.New(io.Discard, "", 0)}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	port := listener.Addr().(*net.TCPAddr).Port
	text := fmt.Sprintf("Barrow is at http://127.0.0.1:%d/ until ctrl-C.\n", port)
	if port != usualPort {
		text += fmt.Sprintf("A browser keeps jobs by address: those kept at port %d are not here.\n", usualPort)
	}
	if _, err := io.WriteString(a.out, text); err != nil {
		server.Close()
		return err
	}
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	// Requests in progress may finish, but a browser that keeps its connection
	// open must not delay the end.
	last, cancel := context.WithTimeout(context.Background(), 2*time.Second)
	defer cancel()
	if server.Shutdown(last) != nil {
		server.Close()
	}
	return nil
}

// listen listens on a port of this machine. A port that was asked for is used
// or refused; when the usual one is taken, any other will do.
func listen(port uint16, asked bool) (net.Listener, error) {
	address := func(port uint16) string { return net.JoinHostPort("127.0.0.1", strconv.Itoa(int(port))) }
	l, err := net.Listen("tcp4", address(port))
	if err != nil && !asked {
		l, err = net.Listen("tcp4", address(0))
	}
	if err != nil {
		return nil, fmt.Errorf("--port %d cannot be used: %w", port, plainNetError(err))
	}
	return l, nil
}

// plainNetError returns the error without the address, which the user knows.
func plainNetError(err error) error {
	if call, ok := errors.AsType[*os.SyscallError](err); ok {
		return call.Err
	}
	return err
}

// pageFolder finds the page, or builds it into a folder that done removes.
func (a *app) pageFolder(ctx context.Context, dir string) (found string, done func(), err error) {
	done = func() {}
	if dir != "" {
		if !hasPage(dir) {
			return "", nil, fmt.Errorf(
				"--dir %s: no page was built there; go run ./web/build -out %s, in a clone, builds it", dir, dir)
		}
		return dir, done, nil
	}
	if hasPage("dist") {
		return "dist", done, nil
	}
	if exec.CommandContext(ctx, "go", "list", pageBuilder).Run() != nil {
		return "", nil, errors.New("there is no page here: ./dist has none, " +
			"and it can only be built in a clone of Barrow, with the go tool; " +
			"in one, go run ./web/build -out dist builds it, and --dir serves it from anywhere")
	}
	if dir, err = os.MkdirTemp("", "barrow-page-"); err != nil {
		return "", nil, err
	}
	done = func() { os.RemoveAll(dir) }
	if _, err := io.WriteString(a.out, "Building the page.\n"); err != nil {
		done()
		return "", nil, err
	}
	var said bytes.Buffer
	build := exec.CommandContext(ctx, "go", "run", pageBuilder, "-quiet", "-out", dir)
	build.Stdout, build.Stderr = &said, &said
	build.Cancel = func() error { return build.Process.Signal(os.Interrupt) }
	build.WaitDelay = 5 * time.Second
	if err := build.Run(); err != nil {
		done()
		return "", nil, fmt.Errorf("the page was not built: %w\n%s", err, bytes.TrimSpace(said.Bytes()))
	}
	return dir, done, nil
}

// hasPage reports whether a page was built into a folder.
func hasPage(dir string) bool {
	for _, name := range []string{"index.html", "barrow.wasm"} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || !info.Mode().IsRegular() {
			return false
		}
	}
	return true
}
