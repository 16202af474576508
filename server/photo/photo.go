// Package photo keeps pictures as files named by their SHA-256, beside the database: photos/ab/abcd….
//
// An upload grows a part file, photos/part/abcd…, and may be resumed at the length reached. When it is complete the
// hash and the picture's header are checked; then it is synced and renamed into place, so a whole photo is never
// half there. Photos are never changed afterwards; one that was changed on the disk all the same is noticed when it is
// asked for and set aside, photos/altered/abcd…, so that it can be uploaded again.
package photo

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"syscall"
	"time"
)

// MaxBytes bounds one photo.
const MaxBytes = 12_000_000

// Errors of a photo folder. Each comes wrapped in a sentence that says what would be right.
var (
	ErrName    = errors.New("not a photo's name")
	ErrMissing = errors.New("no such photo")
	ErrAltered = errors.New("the photo is not the one that was kept")
	ErrOffset  = errors.New("the upload goes on at another place")
	ErrBusy    = errors.New("the photo is being uploaded already")
	ErrSize    = errors.New("the photo is too large")
	ErrHash    = errors.New("the photo is not the one named")
	ErrPicture = errors.New("not a usable picture")
	ErrCut     = errors.New("the upload was cut off")
	ErrFull    = errors.New("the disk is full")
)

// State is how much of a photo is here.
type State struct {
	Have  int64 `json:"have"`
	Whole bool  `json:"whole"`
}

// Folder is the photos of one shop.
type Folder struct {
	dir string

	mu   sync.Mutex
	busy map[string]bool
}

const (
	partFolder    = "part"
	alteredFolder = "altered"
)

// Open uses the folder photos in the data folder and makes it when missing.
func Open(dataDir string) (*Folder, error) {
	dir := filepath.Join(dataDir, "photos")
	for _, inner := range []string{partFolder, alteredFolder} {
		if err := os.MkdirAll(filepath.Join(dir, inner), 0o700); err != nil {
			return nil, fmt.Errorf("the photos' folder %s cannot be made: %w", dir, failure(err))
		}
	}
	return &Folder{dir: dir, busy: map[string]bool{}}, nil
}

// CheckName tells whether name is a SHA-256 in lower-case hex.
func CheckName(name string) error {
	if len(name) == 64 {
		for _, c := range []byte(name) {
			if (c < '0' || c > '9') && (c < 'a' || c > 'f') {
				return fmt.Errorf("%w: only 0-9 and a-f are expected", ErrName)
			}
		}
		return nil
	}
	return fmt.Errorf("%w: it has %d characters: the 64 hex digits of its SHA-256 are expected", ErrName, len(name))
}

func (f *Folder) path(name string) string { return filepath.Join(f.dir, name[:2], name) }
func (f *Folder) part(name string) string { return filepath.Join(f.dir, partFolder, name) }

// State tells how much of the photo is here.
func (f *Folder) State(name string) (State, error) {
	if err := CheckName(name); err != nil {
		return State{}, err
	}
	if info, err := os.Stat(f.path(name)); err == nil {
		return State{info.Size(), true}, nil
	} else if !errors.Is(err, fs.ErrNotExist) {
		return State{}, err
	}
	info, err := os.Stat(f.part(name))
	if errors.Is(err, fs.ErrNotExist) {
		return State{}, nil
	}
	if err != nil {
		return State{}, err
	}
	return State{info.Size(), false}, nil
}

// Unknown is the total of an upload whose length was not said.
const Unknown = -1

// Append adds what body holds to the upload of a photo at offset, which must be what is here already. total is the
// photo's length in bytes, or Unknown: then the upload is complete when its hash is right, or when nothing more comes
// (an empty body). The state is right whatever the error. A photo that is wrong when complete is dropped: ErrHash,
// ErrPicture, ErrSize.
func (f *Folder) Append(name string, offset, total int64, body io.Reader) (State, error) {
	if err := CheckName(name); err != nil {
		return State{}, err
	}
	if total > MaxBytes {
		return State{}, tooLarge(total)
	}
	if !f.take(name) {
		state, _ := f.State(name) // the error that counts is the next one
		return state, fmt.Errorf("%w: try again in a moment", ErrBusy)
	}
	defer f.release(name)
	state, err := f.State(name)
	if err != nil || state.Whole {
		return state, err
	}
	if offset != state.Have {
		return state, fmt.Errorf("%w: %d bytes are here, the upload began at %d: go on at %d", ErrOffset, state.Have, offset, state.Have)
	}
	if total >= 0 && state.Have > total {
		return f.drop(name, fmt.Errorf("%w: %d bytes came of a photo of %d: send it again from the start", ErrHash, state.Have, total))
	}
	state.Have, err = f.write(name, offset, total, body)
	switch {
	case errors.Is(err, ErrSize), errors.Is(err, ErrHash):
		return f.drop(name, err)
	case err != nil || total >= 0 && state.Have < total:
		return state, err
	}
	if err := f.finish(name); err != nil {
		if total < 0 && state.Have > offset && errors.Is(err, ErrHash) {
			return state, nil // more is to come
		}
		if errors.Is(err, ErrHash) || errors.Is(err, ErrPicture) {
			return f.drop(name, err)
		}
		return state, err
	}
	return State{state.Have, true}, nil
}

func (f *Folder) write(name string, offset, total int64, body io.Reader) (have int64, err error) {
	file, err := os.OpenFile(f.part(name), os.O_WRONLY|os.O_CREATE, 0o600)
	if err != nil {
		return offset, failure(err)
	}
	defer func() { err = errors.Join(err, failure(file.Close())) }()
	room := int64(MaxBytes)
	if total >= 0 {
		room = total
	}
	out := &disk{file: file, at: offset}
	_, err = io.Copy(out, io.LimitReader(body, room-offset+1))
	switch {
	case out.err != nil:
		return out.at, failure(out.err)
	case err != nil:
		return out.at, fmt.Errorf("%w after %d bytes: go on there (%w)", ErrCut, out.at, err)
	case out.at > room && total < 0:
		return out.at, tooLarge(out.at)
	case out.at > room:
		return out.at, fmt.Errorf("%w: more than the %d bytes announced came", ErrHash, total)
	}
	return out.at, nil
}

// disk tells a failing disk from a failing connection.
type disk struct {
	file *os.File
	at   int64
	err  error
}

func (d *disk) Write(b []byte) (int, error) {
	n, err := d.file.WriteAt(b, d.at)
	d.at += int64(n)
	d.err = err
	return n, err
}

// finish checks a complete part and moves it to its place, durably.
func (f *Folder) finish(name string) error {
	file, err := os.Open(f.part(name))
	if err != nil {
		return err
	}
	err = check(name, file)
	if err == nil {
		err = file.Sync()
	}
	if err = errors.Join(err, file.Close()); err != nil {
		return failure(err)
	}
	dir := filepath.Dir(f.path(name))
	if err := os.Mkdir(dir, 0o700); err == nil {
		err = syncDir(f.dir)
		if err != nil {
			return failure(err)
		}
	} else if !errors.Is(err, fs.ErrExist) {
		return failure(err)
	}
	if err := os.Rename(f.part(name), f.path(name)); err != nil {
		return failure(err)
	}
	return failure(syncDir(dir))
}

func (f *Folder) drop(name string, why error) (State, error) {
	if err := os.Remove(f.part(name)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return State{}, errors.Join(why, err)
	}
	return State{}, why
}

func (f *Folder) take(name string) bool {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.busy[name] {
		return false
	}
	f.busy[name] = true
	return true
}

func (f *Folder) release(name string) {
	f.mu.Lock()
	defer f.mu.Unlock()
	delete(f.busy, name)
}

// SweepParts removes uploads that have not grown since before, and tells how many.
func (f *Folder) SweepParts(before time.Time) (removed int, err error) {
	parts, err := os.ReadDir(filepath.Join(f.dir, partFolder))
	if err != nil {
		return 0, err
	}
	for _, p := range parts {
		info, err := p.Info()
		if err != nil || !info.ModTime().Before(before) || CheckName(p.Name()) != nil || !f.take(p.Name()) {
			continue
		}
		if os.Remove(f.part(p.Name())) == nil {
			removed++
		}
		f.release(p.Name())
	}
	return removed, nil
}

func tooLarge(n int64) error {
	return fmt.Errorf("%w: %d bytes or more, at most %d: make it smaller", ErrSize, n, MaxBytes)
}

func syncDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}

func failure(err error) error {
	if errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) {
		return fmt.Errorf("%w: make room on the disk of the data folder (%w)", ErrFull, err)
	}
	return err
}
