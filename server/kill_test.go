package server

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"asfound/server/link"
	"asfound/server/photo"
	"asfound/server/record"
	"asfound/server/store/bolt"
)

// childDir, when set, makes this test program a server over that folder.
const childDir = "ASFOUND_TEST_SERVE"

func TestMain(m *testing.M) {
	if dir := os.Getenv(childDir); dir != "" {
		if err := serveChild(dir); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

func serveChild(dir string) error {
	s, err := bolt.Open(dir)
	if err != nil {
		return err
	}
	photos, err := photo.Open(dir)
	if err != nil {
		return err
	}
	now := func() time.Time { return noon }
	links, err := link.Open(dir, s.Drawer("links"), now)
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	fmt.Println(listener.Addr())
	return New(Config{Store: s, Photos: photos, Links: links, Now: now}).Serve(context.Background(), listener)
}

// startChild starts a server process and waits for its address.
func startChild(t *testing.T, dir string) (*exec.Cmd, string) {
	t.Helper()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), childDir+"="+dir)
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	if err == nil {
		err = child.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = child.Process.Kill() // a test may have ended it
		_ = child.Wait()
	})
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal("the server did not start: ", err)
	}
	return child, strings.TrimSpace(line)
}

// The server is killed at any moment, 20 times: what it acknowledged is there after each restart, and what it did not
// is sent again without harm.
func TestKilledServerKeepsWhatItAcknowledged(t *testing.T) {
	dir := t.TempDir()
	random := rand.New(rand.NewPCG(20, 9))
	client := &http.Client{Timeout: 5 * time.Second}
	acknowledged := map[string]bool{}
	var mark record.Stamp // the highest stamp sent before
	var pending []record.Row
	next := int64(0)
	cuts := 0
	for round := range 20 {
		child, addr := startChild(t, dir)
		have := readAll(t, client, addr)
		for key := range acknowledged {
			if !have[key] {
				t.Fatalf("round %d: the acknowledged %s is gone", round, key)
			}
		}
		killed := make(chan struct{})
		go func() {
			time.Sleep(time.Duration(random.Int64N(int64(40 * time.Millisecond))))
			_ = child.Process.Kill() // the test fails below when it lives on
			close(killed)
		}()
		for {
			if len(pending) == 0 {
				for range 3 {
					pending = append(pending, row(fmt.Sprintf("fact/f%d", next), `"x"`, stamp(next, deviceA), ""))
					next++
				}
			}
			m, err := send(client, addr, pushBody(deviceA, cursor{}, mark, 1, pending...))
			if last := stamp(next-1, deviceA); last > mark {
				mark = last
			}
			if err != nil {
				cuts++
				break
			}
			if m.Status != 200 || len(m.Refused) > 0 {
				t.Fatalf("round %d: %+v", round, m)
			}
			for _, r := range pending {
				acknowledged[r.Path] = true
			}
			pending = nil
		}
		<-killed
		_ = child.Wait() // it was killed
	}
	_, addr := startChild(t, dir)
	have := readAll(t, client, addr)
	for key := range acknowledged {
		if !have[key] {
			t.Errorf("at the end: the acknowledged %s is gone", key)
		}
	}
	if cuts != 20 || len(acknowledged) < 20 {
		t.Errorf("%d cuts, %d acknowledged: the test tried too little", cuts, len(acknowledged))
	}
	t.Logf("%d entries acknowledged over %d kills", len(acknowledged), cuts)
}

func send(client *http.Client, addr, body string) (m message, err error) {
	r, err := client.Post("http://"+addr+"/api/sync", "application/json", strings.NewReader(body))
	if err != nil {
		return m, err
	}
	text, err := io.ReadAll(r.Body)
	if err != nil {
		return m, err
	}
	m.Status = r.StatusCode
	return m, json.Unmarshal(text, &m)
}

func readAll(t *testing.T, client *http.Client, addr string) map[string]bool {
	t.Helper()
	have := map[string]bool{}
	for at := (cursor{}); ; {
		m, err := send(client, addr, pushBody(deviceB, at, "", 0))
		if err != nil || m.Status != 200 {
			t.Fatalf("%+v, %v", m, err)
		}
		for _, r := range m.Rows {
			have[r.Path] = true
		}
		if at = m.cursor(); !m.More {
			return have
		}
	}
}

func TestSecondServerProcess(t *testing.T) {
	dir := t.TempDir()
	startChild(t, dir)
	second := exec.Command(os.Args[0])
	second.Env = append(os.Environ(), childDir+"="+dir)
	start := time.Now()
	out, err := second.CombinedOutput()
	if err == nil || !strings.Contains(string(out), "another asfound is already serving this data folder") || strings.Count(string(out), "\n") != 1 {
		t.Errorf("%v: %s", err, out)
	}
	if took := time.Since(start); took > 30*time.Second {
		t.Errorf("it took %v", took)
	}
}
