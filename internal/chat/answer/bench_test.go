package answer

import (
	"fmt"
	"testing"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// From message to committed answer, on an empty book and on one of 300,000
// entries: a plan writes a mark and a post, a setting an entry more, chatter
// nothing. The same rows by a bare prepared transaction: internal/store,
// BenchmarkEmpty/bare and BenchmarkBig/bare.
func BenchmarkTurn(b *testing.B) {
	for _, entries := range []int{0, 300_000} {
		s := open(b)
		s.say("kitchen", "Robin", "3 bags 5lb agar") // a first answer is longer
		s.fill(entries)
		for _, c := range []struct{ name, text string }{
			{"plan", "3 bags 5lb agar"}, {"setting", "round to 5 g"}, {"chatter", "anyone want pizza"},
		} {
			b.Run(fmt.Sprintf("%d/%s", entries, c.name), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					m := s.message("kitchen", "Robin", c.text)
					if err := s.a.Turn(b.Context(), m); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// fill writes entries about runs of long ago.
func (s *stage) fill(entries int) {
	s.t.Helper()
	const batch = 5000
	for done := 0; done < entries; done += batch {
		err := s.db.Update(s.t.Context(), func(tx *store.Tx) error {
			book := tx.Book(1)
			for i := done; i < done+batch; i++ {
				at := s.now.Add(time.Duration(i-entries) * time.Minute)
				_, err := book.Append(store.Line{
					By: 1, Room: 1, At: at, Written: at, Subject: fmt.Sprintf("run/%d", i/60), Entry: kitchen.StartMet{No: 1}, Said: "said long ago",
				})
				if err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			s.t.Fatal(err)
		}
	}
}

// A message about a run that has many entries: what it says of the gauge, written,
// folded, its pings reconciled and the answer committed.
func BenchmarkRunMessage(b *testing.B) {
	for _, entries := range []int{10, 1000} {
		b.Run(fmt.Sprint(entries), func(b *testing.B) {
			s := holding(b)
			s.readings(0, entries-2)
			done := 0
			for b.Loop() {
				if done++; done%10 == 0 { // so that it stays about as long
					b.StopTimer()
					s = holding(b)
					s.readings(0, entries-2)
					b.StartTimer()
				}
				m := s.message("kitchen", "Ana", "15 psi")
				if err := s.a.Turn(b.Context(), m); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// readings fills the hold of run 1 with readings of the gauge.
func (s *stage) readings(from, to int) {
	s.t.Helper()
	begun := s.now
	s.now = s.now.Add(80 * time.Minute)
	err := s.db.Update(s.t.Context(), func(tx *store.Tx) error {
		for i := from; i < to; i++ {
			at := begun.Add(time.Duration(i+1) * 80 * time.Minute / time.Duration(to+1))
			_, err := tx.Book(1).Append(store.Line{
				By: 2, Room: 1, At: at, Written: at, Subject: "run/1", Entry: kitchen.GaugeRead{Gauge: unit.PSI(15)}, Said: "15 psi",
			})
			if err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		s.t.Fatal(err)
	}
}
