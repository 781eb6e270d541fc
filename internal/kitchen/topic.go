package kitchen

// Topic is a subject of the help.
type Topic uint8

// The topics.
const (
	TopicJars Topic = iota + 1
	TopicBags
	TopicFilters
	TopicHydration
	TopicCook
	TopicCooling
	TopicInoculating
	TopicContamination
	TopicShelf
	TopicCautions
	TopicKitchen
	TopicTyping
	// TopicWords explains the words of the trade.
	TopicWords
	// TopicUnits is about what is told of jars and bags, TopicWatching about what is
	// seen on them and when they are ready, TopicCultures about cultures, and
	// TopicTrace about what came from what.
	TopicUnits
	TopicWatching
	TopicCultures
	TopicTrace
)

// Topics lists them all.
func Topics() []Topic {
	return []Topic{
		TopicJars, TopicBags, TopicFilters, TopicHydration, TopicCook, TopicCooling, TopicInoculating,
		TopicContamination, TopicShelf, TopicCautions, TopicKitchen, TopicTyping, TopicWords,
		TopicUnits, TopicWatching, TopicCultures, TopicTrace,
	}
}
