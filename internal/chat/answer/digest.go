package answer

import (
	"cmp"
	"slices"
	"time"

	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// Weekly is the calendar that digests are taken from: the first time after an
// instant at which the clocks of a zone show that time of day on that day of the
// week, and a key with the local date, so that no week has two.
type Weekly func(d kitchen.DigestIs, zone *time.Location, after time.Time) (key string, due time.Time, err error)

// digestRuns is how many runs a digest looks through, the newest: cooked grain
// doesn't stand for as long as it takes to cook them.
const digestRuns = 200

// wantDigest makes the digest that waits equal to what the settings want, once there
// is a load to tell of, cooked here or arrived. One that is due already stays: nobody has had it yet.
func (a *Answerer) wantDigest(book *store.Book, s kitchen.Settings, now time.Time) error {
	if a.weekly == nil {
		return nil
	}
	var want []kitchen.Ping
	at, on := s.DigestAt()
	loads, err := book.AnyLoad()
	if err != nil {
		return err
	}
	if on && loads {
		next, err := a.nextDigest(book, at, a.zoneOf(s), now)
		if err != nil {
			return err
		}
		if quiet, said := s.QuietFor(0); said != kitchen.Default { // who named the time of the digest meant it
			next = kitchen.Shift(next, quiet, a.zoneOf(s))
		}
		want = append(want, next)
	}
	return book.Reconcile(kitchen.DigestPrefix, want, now)
}

func (a *Answerer) nextDigest(book *store.Book, at kitchen.DigestIs, zone *time.Location, now time.Time) (kitchen.Ping, error) {
	waiting, err := book.WaitingPings(kitchen.DigestPrefix)
	if err != nil {
		return kitchen.Ping{}, err
	}
	if len(waiting) > 0 && !waiting[0].Due.After(now) {
		return waiting[0].Ping, nil
	}
	key, due, err := a.weekly(at, zone, now)
	return kitchen.Ping{Key: key, Due: due, Kind: kitchen.WeeklyDigest, Loudness: kitchen.DigestPing}, err
}

// digest queues the digest that is due, if there is anything to say, and wants the
// next one. However long the bot was down, it is one digest of all that time.
func (p pinging) digest(row store.PingRow) error {
	since, err := p.lastDigest()
	if err != nil {
		return err
	}
	if err := p.book.MarkFired(row.Key, p.now); err != nil {
		return err
	}
	if err := p.a.wantDigest(p.book, p.settings, p.now.UTC()); err != nil {
		return err
	}
	stock, err := p.stock(since)
	if err != nil {
		return err
	}
	d := kitchen.DigestOf(stock, since, p.now)
	if d.Empty() {
		return nil
	}
	post := wording.Digest(wording.DigestView{Digest: d, Now: p.now, Late: row.Late(p.now)})
	return p.queue(post, row.Key, row)
}

// lastDigest is when the last one fired; zero for none.
func (p pinging) lastDigest() (time.Time, error) {
	rows, err := p.book.Pings(kitchen.DigestPrefix)
	var last time.Time
	for _, r := range rows {
		if r.Fired.After(last) {
			last = r.Fired
		}
	}
	return last, err
}

// stock is the loads of the newest runs and what arrived and still stands, the oldest
// first.
func (p pinging) stock(since time.Time) ([]kitchen.Stock, error) {
	rows, err := p.book.LastRuns(digestRuns)
	if err != nil {
		return nil, err
	}
	changes, err := p.book.Standing(kitchenSubject)
	if err != nil {
		return nil, err
	}
	settingsAt := kitchen.SettingsAt(changes)
	stock, err := p.arrived(since)
	if err != nil {
		return nil, err
	}
	for _, row := range rows {
		records, err := p.book.Standing(row.No.Subject())
		if err != nil {
			return nil, err
		}
		run, err := kitchen.FoldRun(records, settingsAt)
		if err != nil {
			return nil, err
		}
		stock = append(stock, kitchen.Stock{Run: run, Units: kitchen.FoldUnits(run, records)})
	}
	slices.SortStableFunc(stock, func(a, b kitchen.Stock) int {
		return cmp.Or(a.Units.Begun.Compare(b.Units.Begun), cmp.Compare(a.Units.Run, b.Units.Run))
	})
	return stock, nil
}

// arrived are the loads that no run made of which something stands, or was lost since.
func (p pinging) arrived(since time.Time) ([]kitchen.Stock, error) {
	nos, err := p.book.ArrivedSince(since)
	if err != nil {
		return nil, err
	}
	var stock []kitchen.Stock
	for _, no := range nos {
		records, err := p.book.Standing(no.Subject())
		if err != nil {
			return nil, err
		}
		units, err := kitchen.FoldArrived(records)
		if err != nil {
			return nil, err
		}
		stock = append(stock, kitchen.Stock{Units: units})
	}
	return stock, nil
}
