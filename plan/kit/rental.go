package kit

// Rental is what a quote, a load list and a circuit plan need to know of a unit beside its light.
type Rental struct {
	Supply    float64    // mass of its ballast or power supply, where that does not hang on the stand, kg; 0 none
	Spigot    string     // what it sits on a stand by: the word of a spigot
	Inlet     string     // its mains inlet
	Volts     [2]float64 // the mains that it takes, least and most, V; 0 on batteries alone
	Inrush    float64    // peak of the current as it is switched on, at 230 V, A; 0 not known
	Leakage   *float64   // current that its supply sends down its earth all the time, mA; nil: nothing says it
	Battery   Battery
	IP        string     // ingress protection by IEC 60529: "IP65"; "" not protected
	ComesWith []string   // what is in the case with it
	OwnCable  float64    // of its mains cable, which comes with it, m; 0: it has none, or nobody knows
	Case      [3]float64 // width, depth, height of its case, m
}

// Battery is how a unit runs without mains: V, a share of its light, hours. The zero Battery says that it does not.
type Battery struct {
	Volts  float64 `json:"volts"`           // of its plate, or of the pack inside it
	Plates int     `json:"plates"`          // how many batteries it takes; 0: one is built in
	Share  float64 `json:"share"`           // of its full light that it gives on them
	Hours  float64 `json:"hours,omitempty"` // at that
}

// Runs says whether there is a battery.
func (b Battery) Runs() bool { return b.Volts > 0 }

// The words of spigots and of what else heads sit on a stand by.
const (
	Spigot16     = "16 mm"
	Spigot28     = "28 mm"
	SpigotEither = "16 or 28 mm"
	CameraThread = "1/4 inch thread"
)

// spigots lists them, least first.
var spigots = []string{CameraThread, Spigot16, SpigotEither, Spigot28}

// Takes says whether a stand holds a head by its spigot: a 16 mm stud takes 16 mm sockets and, with the adapter of any kit, a
// camera thread; a 28 mm socket takes 28 mm spigots.
func (s *Stand) Takes(spigot string) bool {
	switch spigot {
	case Spigot28:
		return s.Spigot != Spigot16
	case Spigot16, CameraThread:
		return s.Spigot != Spigot28
	}
	return true
}
