package phrase

// classes are the words that have no token of their own. A word of an earlier
// row keeps that row's class.
var classes = []struct {
	class Class
	words string
}{
	{Filler, `please pls plz the for of some ok okay so just about abt around roughly approx approximately exactly like
		well really then there now's lets let's gonna wanna need needs want wants would could should give gimme
		only also too still maybe perhaps each every per total altogether ish or so ones pcs pc ea pieces`},
	{Asking, `how what whats what's when where which who whos who's why is are can may could does do did much many any`},
	{Greeting, `hi hello hey heya hiya yo howdy greetings hallo moin gm`},
	{Thanking, `thanks thank thx ty cheers ta tnx thankyou`},
	{Agreeing, `yes yeah yep yup aye sure ok okay right correct exactly`},
	{Denying, `no not nope nah never don't dont without`},
	{Joining, `and plus & with w or but n`},
	{Pronoun, `i we you he she it they me us him her them my our your his their this that these those i'm im i've ive
		i'd i'll we're were we've weve we'll we'd you're youre you've it's its he's she's they're that's thats there's
		theres someone somebody anyone anybody everyone mine ours yours`},
	{Trade, `cook cooks cooking cooked put start starting started starts begin load loads loaded loading run runs
		unit units batch batches steam steams steaming steamed vent vents venting vented pressure pressures pressured
		pressurize pressurise psi heat heats heating heated zero zeroed off on reading readings read reads cool cools
		cooling cooled inoculate inoculated inoculates inoculating inoculation noc noc'd nocd knocked shake shakes
		shaking shook shaken contamination contaminated contaminate contam contams trich green black yellow pink white
		blue red brown grey gray wet dry dried drain drained draining drains soak soaks soaked soaking simmer simmers simmered
		simmering moist moisture water ratio hydration hydrate hydrated shelf shelves log logs rates rate trace traces
		calendar export exports exported label labels month months temperature temperatures temp temps received weight
		weights weighs weigh weighed gypsum chalk lime calcium carbonate headspace fridge freezer incubator cupboard basement cellar elevation altitude sea level room rooms
		cooker cookers canner autoclave pot pots big small large little old new gauge gauges dial weighted rack holds hold
		held holding takes take took taken fits fit fill fills filled filling full empty max maximum min minimum rated
		rating rule round rounded rounding step steps scale usual same again undo redo fix wrong change changed changes
		set settings setting kitchen collective members member steward stewards grower growers name names call called
		rename claim code codes forget join joined remind reminder ping pings pinged tell show shows working help topics
		topic jars bags filters filter cautions caution grain grains kernel kernels berry berries spawn spawning substrate straw
		culture cultures lot lots plate bottle bottles syringe jelly mason lid lids foil gasket port ports patch quiet private
		book bookings booking booked cancel cancelled canceled slot board now next stock bought buy buys paid pay pays
		cost costs used use uses threw throw thrown discard discarded gave given lost loses lose dropped drop drops back
		done ready grown growing growth colonised colonized colonise colonize bad looks look looked smells smell sour
		oyster shiitake shitake reishi lion's lions mane king blank left leave oldest newest made make makes making came
		come comes coming out finished ends end half-life sealed seal seals open opened closed close closing between
		inside outside middle top bottom skin surface warm hot cold weeks days hours minutes degrees percent pct per
		boil boiling boils boiled yield yields stored storage imperial us uk british american metric zone timezone time
		measured measure method methods wetted soaking feel feels chart charts picture csv pdf story history digest
		sorry instead replace replaced rather meant mean means bag's quart's each apiece total sum altogether pickup ingredients recipe
		order orders plan plans planned amount amounts at since until till by from to into in before after ago earlier
		later within during above below under over least most than less more fewer up down minus plus times
		pressurecooker sterilise sterilize sterilised sterilized sterile sterilising sterilizing`},
	{Ordinal, `first second third fourth fifth sixth last other another`},
	{Measuring, `fl fluid sq square cubic cu`},
	{Calendar, `st nd rd th now today midday oclock o'clock am pm a.m p.m noon fortnight weekend monthly weekly daily`},
	{Everyday, everyday},
}

// firm words count only when spelt right: a word one letter off is more likely
// something else, and taking it for one of these does harm.
const firm = `cool bad zero off lost threw forget`

// timely are words of which every time without a colon or the name of a day has
// one.
const timely = `am pm a p ago earlier later now h past after to till before at since by until til from around
	o'clock oclock st nd rd th in morrow nite`

// everyday is English of all days: a word that stands here is spelt right.
const everyday = `
	able above across act add added afraid again against age ago agree ah air all allow almost alone along already alright
	always am among amount an and angry another answer any anyway anything apart apple are area arm around arrive as aside
	ask asked asks asleep at ate away awake awful baby back bake baked baking ball band bank bar base basement basic basket bath bbq be
	beans bear beat beautiful became because become bed beef been beer before began begin behind being believe bell belong
	below belt bench beside best bet better beyond bike bill bird birds birthday bit bite blame blood blow board boat body
	bone boots bored boring born boss both bother bought bowl box boxes boy boys brain brake branch bread break breakfast breath
	brick bring brings broke broken brother brought brush bucket build building built bump bunch burn burned burning burnt bus
	bush business busy but butter button by bye cake calm came camera camp can't cant cannot car card care careful carry cars
	case cash cat catch caught cause ceiling chair chance charge charged chase chat cheap check checked checking cheese chicken
	child children choose christmas church circle city clean cleaned cleaning clear clearly clever click climb clock cloth
	clothes cloud club coat coffee coin colour color comb company cooler copy corner cost cough count counted country couple course
	court cousin cover covered cow crack crash crazy cream cried cross crowd cry cup cupboard cups cut cute cutting dad damn dance danger
	dark data date dates daughter day dead deal dear death decide decided deep deer delay delete deliver delivered delivery dent
	desk did didn't didnt die died difference different dig dinner dirt dirty dish dishes do doctor does doesn't doesnt dog dogs doing don't
	door doors double doubt drank draw dream dress drink drive driver driving drove drunk dude due dust each ear early earth
	ease easier easily east easy eat eaten eating edge egg eggs eight either electric else email end enjoy enough enter
	entire equal error escape especially even evening ever every everybody everyone everything everywhere exact example except excited
	excuse exit expect expected expensive explain extra eye eyes face fact fail failed fair fall falling fallen falls false family fan
	fancy far farm farmer fast fat father fault favour favorite fear feed feeding feet fell fellow felt fence few field fifteen fight
	figure file film final finally find fine finger finish fire fish fit five fix fixed flame flat flavour flew floor flour flow flower
	flowers fly folks follow food foot for force forest forever forgot forgotten fork form forward found four free freeze freezer fresh
	friday fridge friend friends from front frozen fruit fruits fruiting full fun funny further future game games garage garden gas gate
	gather gauze gave gear general gentle get gets getting gift girl glad glass gloves go goes going gold gone good goodbye gorgeous got gotta
	grab grade grand grandma grass great greedy greens greet grew grill ground group grow guess guest guy guys had hadn't hair half hall hand
	hands handle hang hanging happen happened happens happy hard hardly harvest has hasn't hasnt hat hate have haven't havent having head
	health hear heard heart heavy heavily height held hell here here's hers herself hide high higher highest hill hilly him himself hit hits hobby hole
	holiday holy home honest honey hope hopefully horn horse hose hospital hour house huge human hundred hungry hurry hurt husband ice idea ideas
	if ill imagine important inch include including indeed indoor indoors info instance instant interest interested interesting internet invite
	iron isn't isnt island issue issues item items itself jacket jam jeep job jobs joke juice jump june just keep keeps kept kettle key keys kick kid
	kids kill killed kind kinda kiss kit kitty knee knew knife know known knows lab lack ladder lady laid lake lamp land lane large late
	lately later laugh laundry law lay lazy lead leader leaf leak leaked leaking leaks learn learned learnt least leather left leg lemon lend
	length less lesson letter letters library lick lie life lift light lights liked likely likes limit line lion lip liquid list listen little live
	lived lives living lmao lol local lock locked lonely long longer look loose lot lots loud love loved lovely loves low lower luck lucky lunch
	machine mad magic mail main mall man manage manual map mark market marks married mask mat match mate material matter matters maybe meal meat
	medium meet meeting meets melt men mention mess message messages met metal mice mid middle might mild mile milk mind mine minor minute mirror
	miss missed missing mistake mix mixed mixing mode model modern mom moment money monster mood moon moss mother mould mold mouldy moldy mountain mouse
	mouth move moved movie moving mr mrs mud mum mushroom mushrooms music must myself nail narrow near nearly neat neck neighbour neither nephew nervous
	net news nice niece nobody noise none normal normally north nose note notes nothing notice numb number numbers nurse nut nuts obviously odd of
	offer office often oh oil omg once one onion online onto opinion opposite option orange ordinary otherwise ought ours ourselves outdoor outdoors oven
	own owner pack package packed page paid pain paint pair pan pants paper parent parents park part parts party pass passed past paste path patient
	pause peace pen pencil people pepper perfect perfectly person pet phone phones photo photos pick picked piece pieces pig pile pillow pin pipe pity pizza
	place places plain plan plane plant plants plastic play played playing pleased plenty pocket point points police pool poor pop possible possibly post posted
	potato potatoes pour poured power practice prefer present press pressed pretty price print printed printer probably problem problems promise proof proper
	properly proud prove pub public pull pulled pump purple purpose push pushed quality question questions quick quickly quite quit race radio rain raining raise
	ran random rang range rat raw reach reached reaches reaching real reality realise realize reason reasonable receipt recent recently recommend record
	regular relax remain remember remove removed rent repair repeat reply rest result return returned reveal rich rid ride ring rinse rinsed rip rise risk
	river road rock rocking rocks roll rolled roof root rope rough row rubber rubbish rude ruin ruined rush sack sacks sad safe said sale salt sand sandwich
	sang sauce save saved saw say saying says scared scary scene school science scissors scoop score scrap scream screen screw sea season seat second secret
	section see seed seeds seeing seem seems seen sell send sends sense sent serious seriously serve service several shade shall shame shape share shared
	sharp she shed sheet ship shirt shit shock shoes shop shopping short shot shots shoulder shout shower shut shy sick side sides sight sign silent silly silver
	similar simple simply sing single sink sister sit site sits sitting situation size sizes skill skip sky sleep sleeping slept slice slight slightly slip slow
	slower slowly smart smile smoke smooth snack snow soap sock soft soil sold solid solve someone something sometimes somewhere son song soon sore sorta
	sort sorts sound sounds soup source south space spare speak special speed spell spend spent spice spill spilled spin split spoke spoon sport spot spots
	spray spread spring square stack stage stairs stand standing stands star stare state station stay stayed steal steel steep stem stick sticky stink stir stirred
	stomach stone stood stop stopped stops store storm stove straight strange stream street stress strike string strong stuck student study stuff stupid style
	subject such sucks sudden suddenly sugar suggest suit summer sun sunny supper support suppose supposed sure surprise swap sweat sweet swim switch table
	tall talk talked talking tape taste taught tax tea teach team tears tell ten tent terrible test tested testing text texts thank that'd themselves thick
	thin thing things think thinking thinks third thirsty thirty though thought thousand three threw through throat throughout thunder ticket tidy tie tied
	tight till tin tiny tip tips tired toast together toilet told tom ton tongue tonight tool tools tooth toss chuck bin trash torn touch touched tough toward towards towel town toy
	track train transfer transfers trash travel tray treat tree trees trick tried trip trouble truck true truly trust truth try trying tub tube tubs turn turned turning
	turns tv twelve twenty twice type typed typo ugh ugly um umm uncle understand unless unlike unload unloaded upon upper upset upstairs useful usually van various
	vegetables vehicle very via video view village visit voice vote wait waited waiting wake walk walked walking wall wallet walls warn was wash washed washing wasn't
	wasnt waste watch watched watching wave way ways weak wear weather web wedding weekend weird welcome welp went weren't west what'd whatever wheel whenever
	whether while whisper whole whose wide wife wild will win wind window wine wing winner winter wipe wiped wire wish within woke woman won won't wont wonder
	wonderful wood wooden word words wore work worked works world worried worry worse worst worth wouldn't wouldnt wow wrap wrapped write written wrote yard
	yeast yellow yet young yours yourself youth zip zipper shot trot boats coats goats throws throes width digress screens explore expire expose presume weighing
	creep careen naught nought taught bound wold wand rice's millet's max eta fyi
	btw idk tbh imo asap brb rn tho cuz cos bc ppl u ur r y gotcha haha hahaha hehe lmk np nvm omw pic pics sec secs afk wtf ffs
	bags's burst bursts crushed crush kernels pellet pellets sawdust coir verm vermiculite compost block blocks bulk bulking log shipped shipping vendor
	king blue plain golden ball balls bore bored bout rang rag rags tag tags beg bug big bat bats mars car cars war wars jeans jaws sags wags nags lags lay says fur fore fort
	cord cork core corner coin torn horn born barn barge large meter gate gain gains train trains brain drain drains strain strains brine pried
	try tie dye die eye bye rise ripe rife wife mile mild mint pine pins pints pint pilot pair parts port sport sports spore's hail half calf halt hand hold bold cold told fold gold
	mold wait bait gait vat hat fat pat rat sat wheats treat heal head heap neat seat beat meal deal seal cool wool tool fool pool look took hook boot cock cork cooks
	eighty ninety thirties hates shapes skates stakes snake snakes shame share sharks quote quotes quarts quake quiz label libel labor march match month mouth moth
	files contains bits calls caller field fields loop loops matches event events furnished nodes node link imported trailing
	leading maps pointers larger span reported bounds edges fully gives users user reserved floating incoming collection blocking
	series null remainder taking older sweep hint hints scanning repeated newer rely slots enclosing latter locks barriers timer
	timers dealings self stale loader stated hence marking cast casts literals manner clone cloned breaking defining critical
	counters sees sharing waits declares stats sums seek freed counting scanner channels branches racing bind enclosed trade
	streaming metrics mount cell cells fused vice arch joint exchange exchanged dual unchanged collecting folding layer nest modes
	tracked role receiver receivers heading headings spinning bounded ties rank regarding restored font peek fees bare forth
	earliest tiles tile starter tends tend stealing letting browsers tooling stating harm border spanning coding lone uploading
	unlocked slack sake braces brace spilling resetting accounts mere becoming goals goal meanings pinned wins lies shutting badly
	election invented cloning sane chose heads rewind bail throwing sought logos logo deals grouping limb patches chances waking
	kills plot worrying pools historic squares sine scores heaps cuts slop rotating losing losses upcoming fewest noun bless threading
	severity grabs crossing mini streamed cares granting waiter willing stores looking creating replaces fake bugs puts shell rare
	races hack relating timed swept hooks wakes pops scaled mass choosing treating feeds closer grace cultural cope alter closure
	capture complex compile element efforts install outlive privacy
	canning preserving gusseted autoclavable neck
	monday sunday someday crooked barely maze teh hte adn taht waht wiht jsut thier recieve wierd yesss okey`

// people are first names that are a letter away from a word of the trade. They
// are known so that they aren't mended to it: kate is no rate.
const people = `anna ana jo joe mike mira mika sara sarah john jon kate leo ben sam tim nick nico lisa maria paul peter ted
	ray roy ron rob bob jan tina lena nina sean dean jean jane lars tara dora rosa karl carl erik bart gary mary matt
	otto pat dan don ian jen kim lee lou meg ned pam sid val zoe adam alan amy andy anne eva eve ivan jack jake
	jess josh juan julia kurt lara laura lily lola luca luis luke marc max mia milo mona noah nora olga oscar
	owen petra rick rita ruth sally sandy simon sofia tess theo toby tom tony vera walt wendy yann`
