/**
 * Words of two that are written as one, and that somebody might call a colour in two: `Night Fall`. In a text they mean themselves.
 *
 * Source: from memory, not complete. One that is missing is taken for the name, and that is told as an error.
 */
export const CLOSED_COMPOUNDS: ReadonlySet<string> = new Set(
  `afterglow afternoon backwater barnacle blackberry blackbird blackfish blackwater blueberry bluebell bluebird bluebottle bluegill bluegrass
  bonfire bottlebrush brackwater buttercup butterfly buttermilk candlelight catfish cloudburst coalfish cobweb cornflower crayfish crawfish
  cutthroat daybreak daylight dewdrop dewberry dishwater dragonfly driftwood duckweed dustbowl earthworm eggshell elderberry evergreen eyeshine
  firebrand firebrick firefly firelight fireweed flagstone floodwater foghorn foxfire foxglove frogspawn gemstone gingerbread glowworm goldenrod
  goldfish goldfinch gooseberry grasshopper gravestone greenback greenfinch gunmetal gunpowder hailstone halfmoon hayfield headwater hedgehog
  hedgerow highlight hornbeam honeycomb honeydew honeysuckle horsefly ironstone jellyfish killdeer kingfisher lamplight lampblack leadwort
  limelight limestone loosestrife lowlight mayfly meadowsweet midnight midsummer midwinter milkweed millpond millrace millstone moonbeam
  moonlight moonrise moonshine moonstone mudbank mudflat muskrat nightfall nightshade oatmeal oxblood oxbow peppercorn pinecone pinewood
  pondweed rainbow raindrop rainfall rainwater rattlesnake redbrick redfish redwing redwood riverbank riverbed rosebud rosehip rosewood
  sandbank sandpiper sandstone seafoam seaweed seashell shellfish silverfish silverside silverweed snakeskin snowdrop snowfall snowflake
  snowmelt sootfall sparkplug springtime starfish starlight stonefly stormcloud stormwater sunbeam sunburn sundown sunfish sunflower sunlight
  sunrise sunset sunshine swampfire tadpole thunderbolt thundercloud thunderhead thunderstorm toadstool toadflax turnstone twilight
  underbelly undertow waterfall waterlily waterline watermelon watermint waterweed wheatfield whitebait whitefish whitewash whitewater wildfire
  wildflower willowherb windfall wintergreen wisteria woodland woodpigeon woodsmoke wormwood yellowtail`.split(/\s+/),
);
