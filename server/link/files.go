package link

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"

	"asfound/rubrics/document"
)

const documentFile = "document.json"

// folder is where a link's document and photos lie; the id was checked.
func (s *Shelf) folder(id string) string { return filepath.Join(s.dir, id) }

// write puts a paper into its folder, all of it or nothing: it grows under another name and is renamed when whole.
func (s *Shelf) write(id string, p paper) (err error) {
	text, err := json.Marshal(p.document)
	if err != nil {
		return err
	}
	part := s.folder(id) + ".part"
	if err := os.RemoveAll(part); err != nil {
		return failure(err)
	}
	if err := os.Mkdir(part, 0o700); err != nil {
		return failure(err)
	}
	defer func() {
		if err != nil {
			_ = os.RemoveAll(part) // the error that counts is the first
		}
	}()
	if err := writeFile(filepath.Join(part, documentFile), text); err != nil {
		return err
	}
	for name, b := range p.files {
		if err := writeFile(filepath.Join(part, name), b); err != nil {
			return err
		}
	}
	if err := syncDir(part); err != nil {
		return failure(err)
	}
	if err := os.RemoveAll(s.folder(id)); err != nil {
		return failure(err)
	}
	if err := os.Rename(part, s.folder(id)); err != nil {
		return failure(err)
	}
	return failure(syncDir(s.dir))
}

func writeFile(path string, b []byte) error {
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return failure(err)
	}
	_, err = file.Write(b)
	if err == nil {
		err = file.Sync()
	}
	return failure(errors.Join(err, file.Close()))
}

func (s *Shelf) erase(id string) error { return failure(os.RemoveAll(s.folder(id))) }

// Document reads a link's document.
func (s *Shelf) Document(l *Link) (doc document.Document, err error) {
	text, err := os.ReadFile(filepath.Join(s.folder(l.ID), documentFile))
	if errors.Is(err, fs.ErrNotExist) {
		return doc, fmt.Errorf("%w: its document is gone", ErrNone)
	}
	if err == nil {
		err = json.Unmarshal(text, &doc)
	}
	return doc, err
}

// Photo reads the copy of a photo of a link's document.
func (s *Shelf) Photo(l *Link, key string) ([]byte, error) {
	c, ok := l.Photos[key]
	if !ok {
		return nil, ErrNone
	}
	b, err := os.ReadFile(filepath.Join(s.folder(l.ID), c.File))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, ErrNone
	}
	return b, err
}

func syncDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}

// ErrDisk: no room left on the disk.
var ErrDisk = errors.New("the disk is full")

func failure(err error) error {
	if errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) {
		return fmt.Errorf("%w: make room on the disk of the data folder (%w)", ErrDisk, err)
	}
	return err
}
