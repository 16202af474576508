package main

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/url"
	"os"
	"time"

	"asfound/pwa"
	"asfound/server"
	"asfound/server/link"
	"asfound/server/photo"
	"asfound/server/store/bolt"
)

const serveUsage = `asfound serve --data DIR [--listen ADDR] [--public URL]

Serves the app and keeps the shop's records, photos and sellers' pages in DIR,
which is made if it is not there. One program per folder.

  --data DIR      the data folder
  --listen ADDR   where to listen, 127.0.0.1:8470 unless said; only this machine's
                  own (loopback) addresses, until devices can be paired
  --public URL    the address under which sellers reach their pages, as
                  https://estimates.example; without it a seller's link opens on
                  this machine alone. What answers there must pass on only paths
                  under /s/ (and /robots.txt), with the name it was asked for in
                  Host and the sender in X-Forwarded-For

Stop it with Ctrl+C; requests under way are finished.
`

func serve(ctx context.Context, args []string, out, log io.Writer) error {
	flags, rest, err := options(args, []string{"data", "listen", "public"}, nil)
	switch {
	case err != nil:
		return err
	case len(rest) > 0:
		return misuse("%q is not understood", rest[0])
	case flags["data"] == "":
		return misuse("--data DIR is missing: name the folder that holds the records")
	}
	address := first(flags["listen"], "127.0.0.1:8470")
	if err := server.CheckListen(address); err != nil {
		return err
	}
	var public *url.URL
	if flags["public"] != "" {
		if public, err = server.ParsePublic(flags["public"]); err != nil {
			return err
		}
	}
	// Only the last folder is made: a mistyped path must not start an empty shop.
	if err := os.Mkdir(flags["data"], 0o700); err != nil && !os.IsExist(err) {
		return fmt.Errorf("the data folder %s cannot be made (%w): name one whose parent exists", flags["data"], err)
	}
	records, err := bolt.Open(flags["data"])
	if err != nil {
		return err
	}
	defer records.Close()
	photos, err := photo.Open(flags["data"])
	if err != nil {
		return err
	}
	links, err := link.Open(flags["data"], records.Drawer("links"), time.Now)
	if err != nil {
		return err
	}
	site, err := pwa.Site()
	if err != nil {
		site = nil // the server says on its page that the app was not built
	}
	logger := slog.New(slog.NewTextHandler(log, nil))
	s := server.New(server.Config{Store: records, Photos: photos, Links: links, Public: public, Site: site, Now: time.Now, Log: logger})
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp", address)
	if err != nil {
		return fmt.Errorf("cannot listen on %s (%w): stop what listens there, or give another --listen", address, err)
	}
	fmt.Fprintf(out, "serving %s on http://%s\n", flags["data"], listener.Addr())
	return s.Serve(ctx, listener)
}
