package photo

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

func (f *Folder) altered(name string) string { return filepath.Join(f.dir, alteredFolder, name) }

// Get opens a whole photo and tells its media type. Its bytes are hashed before they are handed out: a disk that fails
// slowly, or somebody at the files, must not pass another picture off as the recorded one. The caller closes it.
func (f *Folder) Get(name string) (*os.File, string, error) {
	if err := CheckName(name); err != nil {
		return nil, "", err
	}
	file, err := os.Open(f.path(name))
	if errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Stat(f.altered(name)); err == nil {
			return nil, "", isAltered()
		}
		return nil, "", fmt.Errorf("%w: it has not been uploaded yet", ErrMissing)
	}
	if err != nil {
		return nil, "", err
	}
	kind, err := verify(name, file)
	if err == nil {
		return file, kind, nil
	}
	err = errors.Join(err, file.Close())
	if errors.Is(err, ErrAltered) {
		err = errors.Join(err, f.setAside(name))
	}
	return nil, "", err
}

// verify hashes the file and leaves it at its start.
func verify(name string, file *os.File) (kind string, err error) {
	hash := sha256.New()
	if _, err := io.Copy(hash, file); err != nil {
		return "", err
	}
	if hex.EncodeToString(hash.Sum(nil)) != name {
		return "", isAltered()
	}
	var head [12]byte
	n, err := file.ReadAt(head[:], 0)
	if err != nil && !errors.Is(err, io.EOF) {
		return "", err
	}
	_, err = file.Seek(0, io.SeekStart)
	return mediaType(head[:n]), err
}

// setAside keeps the altered file, and makes room for the right one.
func (f *Folder) setAside(name string) error {
	if err := os.Rename(f.path(name), f.altered(name)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return failure(err)
	}
	return nil
}

func isAltered() error {
	return fmt.Errorf("%w: its bytes on this disk were changed; a device that holds the right picture, or a backup, can send it again", ErrAltered)
}
