package main

import (
	"context"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"time"
)

// up builds everything, fills a data folder with the invented shop the first time,
// and serves it.
func up(ctx context.Context, args []string) error {
	set := flag.NewFlagSet("up", flag.ExitOnError)
	data := set.String("data", ".cache/shop", "the data folder")
	listen := set.String("listen", "127.0.0.1:8470", "the address to serve on")
	if err := set.Parse(args); err != nil {
		return err
	}
	if l, err := net.Listen("tcp", *listen); err != nil {
		return fmt.Errorf("%s cannot be used (%w): stop what listens there, or give another -listen", *listen, err)
	} else if err := l.Close(); err != nil {
		return err
	}
	if err := buildSite(ctx, 5); err != nil {
		return err
	}
	binary := filepath.Join(".cache", "asfound")
	if err := os.MkdirAll(".cache", 0o755); err != nil {
		return err
	}
	if err := buildBinary(ctx, binary, ""); err != nil {
		return err
	}
	_, err := os.Stat(filepath.Join(*data, "asfound.db"))
	fresh := os.IsNotExist(err)
	server := command(ctx, ".", nil, binary, "serve", "--data", *data, "--listen", *listen)
	server.Cancel = func() error { return server.Process.Signal(os.Interrupt) }
	server.WaitDelay = 12 * time.Second
	if err := server.Start(); err != nil {
		return err
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Wait() }()
	base := "http://" + *listen
	if err := answers(ctx, base, ended); err != nil {
		return err
	}
	if fresh {
		if err := step("the invented demo shop", func() error { return seed(ctx, base) }); err != nil {
			return err
		}
	}
	_, port, _ := net.SplitHostPort(*listen)
	fmt.Printf(`
Ready: http://localhost:%s

Try first:
  1. Open the address and choose the fully inspected lift: its verdict, estimate and offer.
  2. Choose the lift inspected by half and do two of the checks it asks for next.
  3. Stop this program (Ctrl+C), reload the page: everything still works. Start it
     again: what you did is sent by itself.
Everything in it is invented: people, makers, places and prices.
`, port)
	err = <-ended
	if ctx.Err() != nil {
		return nil
	}
	return err
}

// answers waits until the server is ready or ended.
func answers(ctx context.Context, base string, ended <-chan error) error {
	for range 100 {
		select {
		case err := <-ended:
			return fmt.Errorf("the server stopped at once: %w", err)
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(100 * time.Millisecond):
		}
		if res, err := http.Get(base + "/api/health"); err == nil {
			res.Body.Close()
			if res.StatusCode == http.StatusOK {
				return nil
			}
		}
	}
	return fmt.Errorf("the server does not answer at %s after 10 s", base)
}
