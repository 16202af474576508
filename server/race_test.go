package server

import (
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"asfound/server/store/bolt"
)

// Whatever happens at once, an answer that was acknowledged is with the devices, and a withdrawn link takes no more.
func TestAnswersWhileWithdrawn(t *testing.T) {
	s := newShop(t)
	s.opener = bolt.OpenUnsynced
	s.restart()
	for round := range 20 {
		a := goodAsk(t)
		id := fmt.Sprintf("01jzzzzzzzzzzzzzzzzzzzzz%02d", round)
		a.head["id"] = id
		path := s.askLink(a).Path
		var wg sync.WaitGroup
		var mu sync.Mutex
		taken := map[string]bool{}
		for i := range 12 {
			wg.Go(func() {
				switch {
				case i == 6:
					time.Sleep(time.Duration(round) * 200 * time.Microsecond)
					if w := s.ask("DELETE", "/api/links/"+id, ""); w.Code != 200 {
						t.Errorf("withdrawal: %d %s", w.Code, w.Body)
					}
				case i%3 == 0:
					if w := s.page(path); w.Code != 200 && w.Code != 404 {
						t.Errorf("page: %d", w.Code)
					}
				default:
					line := []string{cable, "finding.pad"}[i%2]
					word := fmt.Sprintf("word %d", i)
					switch w := s.answer(path, said(line, "agree", word)...); w.Code {
					case 303:
						mu.Lock()
						taken[line] = true
						mu.Unlock()
					case 404:
					default:
						t.Errorf("answer: %d %s", w.Code, w.Body)
					}
				}
			})
		}
		wg.Wait()
		if w := s.answer(path, said(cable, "agree", "late")...); w.Code != 404 && w.Code != 429 {
			t.Errorf("after the withdrawal: %d", w.Code)
		}
		rows := s.pulled(deviceA)
		for line := range taken {
			row, ok := rows["link/"+id+"/answer/"+line]
			if !ok || len(row.Entries) != 1 || strings.Contains(string(row.Entries[0].Value), "late") {
				t.Errorf("round %d: %s: %v", round, line, row)
			}
		}
		s.now = s.now.Add(time.Minute)
	}
}
