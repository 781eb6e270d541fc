package ordeal

import (
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/faultfs"
	"ryebell/internal/store/storetest"
)

// Every operation on the disk fails, once and for good, at every point of a
// quarter of an hour: what was answered is in the book, the book is sound, and the
// program goes on when the fault goes.
func TestEveryOperationFails(t *testing.T) {
	p := prepare(t, "quarter.txt")
	all := p.faults()
	if slowness > 1 {
		all = sampled(all, len(all)/slowness)
	}
	p.try(t, all)
}

// The same, at random points of a whole day.
func TestOperationsOfADayFail(t *testing.T) {
	p := prepare(t, busy)
	p.try(t, sampled(p.faults(), max(600/slowness, 10)))
}

func sampled(all []trial, n int) []trial {
	chance := rand.New(rand.NewPCG(2026, 1))
	chance.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all[:n]
}

// played is a script with the disk as it was before each of its stages.
type played struct {
	script script
	moment []moment
}

// moment is the disk before a stage. The files of a program that runs are copied,
// so that the stage begins where it began.
type moment struct {
	files map[string][]byte
	ops   int // of the stage
}

// always has the log written back in most stages.
var always = store.Config{Readers: 1, LogPages: 12}

func prepare(t *testing.T, name string) *played {
	t.Helper()
	p := &played{}
	p.script, _ = rehearsed(t, name)
	folder := inMemory(t)
	disk := faultfs.Watch(t, folder)
	b := startedWith(t, folder, sink{}, p.script.Start, always)
	for _, do := range p.script.stages(nil) {
		files, before := read(t, folder), disk.Count()
		if err := do(t.Context(), b); err != nil {
			t.Fatal(err)
		}
		p.moment = append(p.moment, moment{files, disk.Count() - before})
	}
	p.moment = append(p.moment, moment{files: read(t, folder)})
	if err := b.db.Close(); err != nil {
		t.Fatal(err)
	}
	return p
}

// read reads the files of a book; its shared memory is made anew.
func read(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	for _, name := range []string{store.FileName, store.FileName + "-wal"} {
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		all[name] = data
	}
	return all
}

// trial is a fault at one operation of one stage.
type trial struct {
	stage, op int
	code      faultfs.Code
	span      faultfs.Span
}

func (f trial) String() string {
	return fmt.Sprintf("stage %d, operation %d, code %d, %s", f.stage, f.op, f.code, f.span)
}

// faults lists every fault that there can be.
func (p *played) faults() []trial {
	var all []trial
	for stage, m := range p.moment {
		for op := 1; op <= m.ops; op++ {
			for _, code := range faultfs.Codes() {
				all = append(all, trial{stage, op, code, faultfs.Once}, trial{stage, op, code, faultfs.Lasting})
			}
		}
	}
	return all
}

// tally counts what the faults did.
type tally struct {
	mu                            sync.Mutex
	failed, unnoticed, ended, met int
}

// try runs the faults, spread over the processors.
func (p *played) try(t *testing.T, all []trial) {
	t.Helper()
	var sum tally
	start := time.Now()
	ends := make([]storetest.Contents, len(p.moment))
	for i, m := range p.moment {
		folder := inMemory(t)
		write(t, folder, m.files)
		ends[i] = contents(t, folder)
		if err := sound(t.Context(), folder); err != nil {
			t.Fatal(err)
		}
	}
	workers := runtime.GOMAXPROCS(0)
	var wg sync.WaitGroup
	for w := range workers {
		folder := inMemory(t)
		v := &victim{played: p, folder: folder, disk: faultfs.Watch(t, folder), sum: &sum}
		part := all[len(all)*w/workers : len(all)*(w+1)/workers]
		wg.Go(func() {
			for _, f := range part {
				if err := v.suffer(t, f, ends); err != nil {
					t.Errorf("%v: %v", f, err)
				}
			}
		})
	}
	wg.Wait()
	t.Logf("%d faults in %v: %d stages failed, %d faults went unnoticed, %d times the process had to end",
		sum.met, time.Since(start).Round(time.Millisecond), sum.failed, sum.unnoticed, sum.ended)
	// A process that has just begun may have its log written back a stage later.
	if sum.met < len(all)*99/100 || sum.failed == 0 || sum.ended == 0 {
		t.Errorf("of %d faults %d were met, %d stages failed, %d ended the process", len(all), sum.met, sum.failed, sum.ended)
	}
}

func write(t *testing.T, folder string, files map[string][]byte) {
	t.Helper()
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// victim suffers one fault after the other.
type victim struct {
	*played
	folder string
	disk   *faultfs.Disk
	sum    *tally

	bot   *bot
	told  []string
	took  map[int64]int
	ended int
}

// after is how many stages are played behind the one that the fault falls in.
const after = 1

// suffer plays the stage that the fault falls in, again until it is done, and
// those behind it.
func (v *victim) suffer(t *testing.T, f trial, ends []storetest.Contents) error {
	v.told, v.took, v.ended = nil, map[int64]int{}, 0
	write(t, v.folder, v.moment[f.stage].files)
	if err := v.start(t); err != nil {
		return err
	}
	last := min(f.stage+1+after, len(v.moment)-1)
	stages := v.script.stages(func(m chat.Message) { v.told = append(v.told, m.Event) })[f.stage:last]
	v.disk.Fail(f.op, f.code, f.span)
	for _, do := range stages {
		if err := v.insist(t, do); err != nil {
			return err
		}
	}
	hits := v.disk.Hits()
	v.disk.Mend()
	if err := errors.Join(agrees(t.Context(), v.bot.db), v.bot.db.Close()); err != nil {
		return err
	}
	v.sum.mu.Lock()
	v.sum.ended += v.ended
	if hits > 0 {
		v.sum.met++
	}
	v.sum.mu.Unlock()
	return v.judge(t, ends[last])
}

func (v *victim) start(t *testing.T) (err error) {
	v.bot, err = open(t.Context(), v.folder, &once{Door: sink{took: func(p chat.Parcel) error {
		v.took[p.Row]++
		return nil
	}}}, always)
	return err
}

// patience is how often a stage is tried before the fault goes.
const patience = 3

// insist does a stage, and again as often as it fails: doors offer a message
// again, reminders and outbox look again. After a failed sync the process ends
// and another begins.
func (v *victim) insist(t *testing.T, do stage) error {
	for try := 1; ; try++ {
		hits := v.disk.Hits()
		err := do(t.Context(), v.bot)
		if err == nil {
			return v.unnoticed(hits)
		}
		if v.disk.Hits() == hits {
			return fmt.Errorf("a sound disk, and yet: %w", err)
		}
		v.sum.mu.Lock()
		v.sum.failed++
		v.sum.mu.Unlock()
		if strings.Contains(err.Error(), "(1034)") != errors.Is(err, store.ErrFsync) {
			return fmt.Errorf("a failed sync is not told as one: %w", err)
		}
		if try == patience {
			v.disk.Mend()
		}
		if errors.Is(err, store.ErrFsync) {
			if err := v.restart(t); err != nil {
				return err
			}
		}
	}
}

// unnoticed is for a stage that was done though something failed: writing back may
// be put off, but no sync may fail unheard.
func (v *victim) unnoticed(before int) error {
	if v.disk.Hits() == before {
		return nil
	}
	v.sum.mu.Lock()
	defer v.sum.mu.Unlock()
	v.sum.unnoticed++
	if v.disk.Fault() == faultfs.SyncError {
		return errors.New("a sync failed unheard")
	}
	return nil
}

// restart ends the process and begins another one. What closing has to say of the
// disk nobody hears.
func (v *victim) restart(t *testing.T) error {
	v.ended++
	_ = v.bot.db.Close()
	err := v.start(t)
	if err != nil {
		v.disk.Mend()
		err = v.start(t)
	}
	return err
}

// inAnyOrder is the contents with the posts sorted by what they say, whatever their
// numbers, which the door calls them by: a ping that
// failed once is fired behind the others of its moment, which wait for nobody.
func inAnyOrder(c storetest.Contents) storetest.Contents {
	c = maps.Clone(c)
	rows := strings.Split(c["outbox"], "\n")
	for i, row := range rows {
		no, said, _ := strings.Cut(row, "|")
		rows[i] = strings.ReplaceAll(said, "'post-"+no+"'", "'post'")
	}
	slices.Sort(rows)
	c["outbox"] = strings.Join(rows, "\n")
	return c
}

// judge holds the book against that of a day without faults.
func (v *victim) judge(t *testing.T, want storetest.Contents) error {
	got, err := storetest.Alike(v.folder)
	if err != nil {
		return err
	}
	for _, event := range v.told {
		if !strings.Contains(got["inbox"], "|'"+event+"'|") {
			return fmt.Errorf("%s %w", event, errLost)
		}
	}
	if err := same(inAnyOrder(got), inAnyOrder(want)); err != nil {
		return err
	}
	for row, times := range v.took {
		if times > 1+v.ended {
			return fmt.Errorf("post %d was sent %d times, the process ended %d times", row, times, v.ended)
		}
	}
	return nil
}
