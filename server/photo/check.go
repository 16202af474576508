package photo

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	_ "image/jpeg" // for DecodeConfig
	_ "image/png"  // for DecodeConfig
	"io"
	"os"

	_ "golang.org/x/image/webp" // for DecodeConfig
)

// Bounds of a picture. They are checked in its header, before anything unpacks it: a small file can claim a picture
// that fills all memory.
const (
	MaxSide   = 12_000
	MaxPixels = 50_000_000
)

// check tells whether the file is the photo of that name and a picture within bounds.
func check(name string, file *os.File) error {
	hash := sha256.New()
	size, err := io.Copy(hash, file)
	if err != nil {
		return err
	}
	if size == 0 {
		return fmt.Errorf("%w: it is empty (0 bytes): a JPEG, PNG or WebP is expected", ErrPicture)
	}
	if got := hex.EncodeToString(hash.Sum(nil)); got != name {
		return fmt.Errorf("%w: its SHA-256 is %s: it was damaged on the way, send it again from the start", ErrHash, got)
	}
	if _, err := file.Seek(0, io.SeekStart); err != nil {
		return err
	}
	head := make([]byte, 12)
	n, err := file.ReadAt(head, 0)
	if err != nil && err != io.EOF {
		return err
	}
	if mediaType(head[:n]) == "" {
		return fmt.Errorf("%w: a JPEG, PNG or WebP is expected", ErrPicture)
	}
	config, format, err := image.DecodeConfig(file)
	if err != nil {
		return fmt.Errorf("%w: its header cannot be read (%w): a JPEG, PNG or WebP is expected", ErrPicture, err)
	}
	if config.Width < 1 || config.Height < 1 || config.Width > MaxSide || config.Height > MaxSide || config.Width*config.Height > MaxPixels {
		return fmt.Errorf("%w: it is %d by %d: 1 to %d a side and at most %d million points are allowed", ErrPicture, config.Width, config.Height, MaxSide, MaxPixels/1_000_000)
	}
	return checkPrivate(format, file)
}

// mediaType tells by the first bytes; "" for what is none of the three.
func mediaType(head []byte) string {
	switch {
	case bytes.HasPrefix(head, []byte("\xff\xd8\xff")):
		return "image/jpeg"
	case bytes.HasPrefix(head, []byte("\x89PNG\r\n\x1a\n")):
		return "image/png"
	case len(head) >= 12 && string(head[:4]) == "RIFF" && string(head[8:12]) == "WEBP":
		return "image/webp"
	}
	return ""
}
