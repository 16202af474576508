package server

import (
	"bytes"
	"fmt"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"

	"go.etcd.io/bbolt"

	"asfound/server/record"
)

const (
	benchRows  = 500
	benchValue = 60 // makes a row of about 230 bytes
)

// benchBatch is a batch of new rows of about 230 bytes each, and how many bytes they are.
func benchBatch(n int) (rows []record.Row, size int) {
	value := `"` + strings.Repeat("x", benchValue) + `"`
	for i := range benchRows {
		at := int64(n*benchRows + i - 1_000_000_000)
		r := row(fmt.Sprintf("finding/wr%09d/note", n*benchRows+i), value, stamp(at, deviceA), "")
		rows = append(rows, r)
		size += len(r.Append(nil))
	}
	return rows, size
}

// BenchmarkPush is one push of 500 new rows through the HTTP handler, to the disk.
func BenchmarkPush(b *testing.B) {
	s := newShop(b)
	bytesPerPush := 0
	at, mark, n := cursor{}, record.Stamp(""), 0
	for b.Loop() {
		b.StopTimer()
		rows, size := benchBatch(n)
		body := pushBody(deviceA, at, mark, 0, rows...)
		r := httptest.NewRequest("POST", "http://127.0.0.1:8080/api/sync", strings.NewReader(body))
		r.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		n, bytesPerPush, mark = n+1, size, rows[benchRows-1].Entries[0].Stamp
		b.StartTimer()
		s.server.Handler().ServeHTTP(w, r)
		b.StopTimer()
		m := s.read(w)
		if w.Code != http.StatusOK || len(m.Refused) > 0 || m.Seq != uint64(n*benchRows) {
			b.Fatalf("%d %.300s", w.Code, w.Body)
		}
		at = m.cursor()
		b.StartTimer()
	}
	report(b, bytesPerPush)
}

// BenchmarkRawBolt writes the same bytes under the same keys in one transaction per 500: the floor.
func BenchmarkRawBolt(b *testing.B) {
	db, err := bbolt.Open(filepath.Join(b.TempDir(), "raw.db"), 0o600, &bbolt.Options{FreelistType: bbolt.FreelistMapType})
	if err != nil {
		b.Fatal(err)
	}
	defer db.Close()
	bytesPerPush, n := 0, 0
	for b.Loop() {
		b.StopTimer()
		rows, size := benchBatch(n)
		keys, values := make([][]byte, benchRows), make([][]byte, benchRows)
		for i, r := range rows {
			keys[i], values[i] = []byte(r.Doc+"\x00"+r.Path), r.Append(nil)
		}
		n, bytesPerPush = n+1, size
		b.StartTimer()
		if err := db.Update(func(tx *bbolt.Tx) error {
			bucket, err := tx.CreateBucketIfNotExists([]byte("rows"))
			if err != nil {
				return err
			}
			for i := range keys {
				if err := bucket.Put(keys[i], bytes.Clone(values[i])); err != nil {
					return err
				}
			}
			return nil
		}); err != nil {
			b.Fatal(err)
		}
	}
	report(b, bytesPerPush)
}

func report(b *testing.B, bytesPerPush int) {
	b.SetBytes(int64(bytesPerPush))
	b.ReportMetric(float64(b.N*benchRows)/b.Elapsed().Seconds(), "rows/s")
	b.ReportMetric(float64(bytesPerPush)/benchRows, "B/row")
}
