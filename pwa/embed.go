// Package pwa carries the built app inside the program.
package pwa

import (
	"embed"
	"io/fs"
)

//go:embed all:dist
var dist embed.FS

// Site is the built app, or an error where it was never built.
func Site() (fs.FS, error) {
	if _, err := fs.Stat(dist, "dist/app"); err != nil {
		return nil, err
	}
	return fs.Sub(dist, "dist/app")
}
