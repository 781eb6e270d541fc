package kitchen

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
)

// Stored is an entry as the book keeps it. The shape that a Kind and Version
// stand for never changes again, except that it may gain fields which may be
// left out; anything else is a new Version.
type Stored struct {
	Kind    string
	Version int
	Body    []byte // JSON
}

// ErrUnknownKind says that the book holds an entry of a kind or version that
// this program doesn't know.
var ErrUnknownKind = errors.New("unknown kind of entry")

// codec is how one kind of entry is stored and read.
type codec struct {
	kind    string
	version int
	shape   reflect.Type
	decode  func(body []byte) (Entry, error)
}

// codecs has a row for each kind and version ever written. Of several rows of
// one type the first is the one that is written.
var codecs = []codec{
	stored[Struck]("struck", 1),
	stored[RunBegun]("run begun", 1),
	stored[PrepBegun]("preparation begun", 1),
	stored[PrepEnded]("preparation ended", 1),
	stored[HeatOn]("heat on", 1),
	stored[Steam]("steam", 1),
	stored[VentClosed]("vent closed", 1),
	stored[AtPressure]("at pressure", 1),
	stored[GaugeRead]("gauge read", 1),
	stored[PressureLost]("pressure lost", 1),
	stored[PressureBack]("pressure back", 1),
	stored[Dipped]("dipped", 1),
	stored[HeatOff]("heat off", 1),
	stored[AtZero]("zero", 1),
	stored[OutOfPot]("out of pot", 1),
	stored[TempRead]("temperature read", 1),
	stored[WaterLeft]("water left", 1),
	stored[WaterIn]("water in", 1),
	stored[CalledOff]("called off", 1),
	stored[RunGone]("run gone", 1),
	stored[TookOver]("took over", 1),
	stored[HandOffered]("hand offered", 1),
	stored[HandAccepted]("hand accepted", 1),
	stored[PingAnswered]("ping answered", 1),
	stored[BookingMade]("booking made", 1),
	stored[BookingReleased]("booking released", 1),
	stored[BookingMoved]("booking moved", 1),
	stored[GearFailed]("gear failed", 1),
	stored[GearChecked]("gear checked", 1),
	stored[GaugeReads]("gauge reads", 1),
	stored[QuietHours]("quiet hours", 1),
	stored[PingsPrivate]("pings private", 1),
	stored[StartWanted]("start wanted", 1),
	stored[StartMet]("start met", 1),
	stored[MemberJoined]("member joined", 1),
	stored[RoleGiven]("role given", 1),
	stored[Forgotten]("forgotten", 1),
	stored[RoomJoined]("room joined", 1),
	stored[Elevation]("elevation", 1),
	stored[RoomTemperature]("room temperature", 1),
	stored[CoolLimitIs]("cool limit", 1),
	stored[CookerIs]("cooker", 1),
	stored[HoldIs]("hold", 1),
	stored[MethodIs]("method", 1),
	stored[StepIs]("step", 1),
	stored[JarFill]("jar fill", 1),
	stored[YieldIs]("yield", 1),
	stored[RatioIs]("ratio", 1),
	stored[UsualGrain]("usual grain", 1),
	stored[UsualOrder]("usual order", 1),
	stored[GypsumIs]("gypsum", 1),
	stored[BagMeans]("bag means", 1),
	stored[HeadspaceIs]("headspace", 1),
	stored[StorageMoisture]("storage moisture", 1),
	stored[ZoneIs]("zone", 1),
	stored[MeasureIs]("measure", 1),
	stored[PressureIs]("pressure", 1),
	stored[DigestIs]("digest", 1),
	stored[RestIs]("rest", 1),
	stored[Arrived]("arrived", 1),
	stored[Inoculated]("inoculated", 1),
	stored[BlankSet]("blank set", 1),
	stored[GrowthSeen]("growth seen", 1),
	stored[Shaken]("shaken", 1),
	stored[SignSeen]("sign seen", 1),
	stored[GrownThrough]("grown through", 1),
	stored[UnitsUsed]("units used", 1),
	stored[UnitsGiven]("units given", 1),
	stored[UnitsDiscarded]("units discarded", 1),
	stored[UnitsGone]("units gone", 1),
	stored[UnitsMoved]("units moved", 1),
	stored[UnitNamed]("unit named", 1),
	stored[UnitsTagged]("units tagged", 1),
	stored[UnitsStood]("units stood", 1),
	stored[LotSaid]("lot said", 1),
	stored[CultureMade]("culture made", 1),
	stored[CultureEnded]("culture ended", 1),
}

func stored[E Entry](kind string, version int) codec {
	return codec{
		kind: kind, version: version, shape: reflect.TypeFor[E](),
		decode: func(body []byte) (Entry, error) {
			var e E
			err := decodeStrictly(body, &e)
			return e, err
		},
	}
}

// decodeStrictly refuses a field it doesn't know: a fact passed over in silence
// would change what is derived from the entry.
func decodeStrictly(body []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(body))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return err
	}
	if _, err := d.Token(); err != io.EOF {
		return errors.New("more than one value")
	}
	return nil
}

// Encode gives the stored form of an entry. It fails for an entry that JSON
// can't hold (a quantity that is not a number) and panics for a type without a
// row in the table.
func Encode(e Entry) (Stored, error) {
	shape := reflect.TypeOf(e)
	for _, c := range codecs {
		if c.shape == shape {
			body, err := json.Marshal(e)
			if err != nil {
				return Stored{}, fmt.Errorf("encode %s: %w", c.kind, err)
			}
			return Stored{Kind: c.kind, Version: c.version, Body: body}, nil
		}
	}
	panic(fmt.Sprintf("no stored form for %T", e))
}

// Decode reads an entry back. The error wraps [ErrUnknownKind] when the kind or
// version was written by another program than this one.
func Decode(s Stored) (Entry, error) {
	for _, c := range codecs {
		if c.kind == s.Kind && c.version == s.Version {
			e, err := c.decode(s.Body)
			if err != nil {
				return nil, fmt.Errorf("decode %s: %w", c.kind, err)
			}
			return e, nil
		}
	}
	return nil, fmt.Errorf("%w: %q version %d", ErrUnknownKind, s.Kind, s.Version)
}
