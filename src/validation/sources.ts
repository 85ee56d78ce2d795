/** Every document and method the checks lean on, with its edition and how it was read. */
import type { Source } from './types.ts';

export const SOURCES = {
  'ashrae-2021': {
    title: 'ASHRAE Handbook, Fundamentals (SI), chapter 21, Duct Design',
    edition: '2021',
    read: 'in a public transcription, not checked against the printed handbook',
  },
  'ashrae-2009': {
    title: 'ASHRAE Handbook, Fundamentals (SI), chapter 21, tables of round fittings',
    edition: '2009',
    read: 'in a reprint of the tables',
  },
  'ashrae-2017': {
    title: 'ASHRAE Handbook, Fundamentals (SI), chapter 1, table 3, saturated moist air',
    edition: '2017',
    read: 'as carried in the tests of the open psychrometric library',
  },
  cengel: {
    title: 'Cengel and Cimbala, Fluid Mechanics: Fundamentals and Applications',
    edition: 'edition not seen',
    read: 'inputs and printed answers in textbook companion codes',
  },
  white: {
    title: 'White, Fluid Mechanics, square duct example',
    edition: 'edition not seen',
    read: 'inputs and printed answers in a textbook companion code',
  },
  stoecker: {
    title: 'Stoecker and Jones, Refrigeration and Air Conditioning, fans',
    edition: 'edition not seen',
    read: 'inputs and printed answer in a problem bank',
  },
  fox: {
    title: 'Fox and McDonald, Introduction to Fluid Mechanics, Example 10.11',
    edition: 'edition not seen',
    read: 'inputs in a textbook companion code; answers worked apart from this engine',
  },
  douglas: {
    title: 'Douglas and others, Fluid Mechanics, Example 14.6',
    edition: 'edition not seen',
    read: 'inputs in a textbook companion code; answer worked apart from this engine',
  },
  irc: {
    title: 'International Residential Code, exhaust duct length, table M1504.2 (earlier M1506.2)',
    edition: '2012 to 2018',
    read: 'in two independent transcriptions that agree',
  },
  idelchik: {
    title: 'Idelchik, Handbook of Hydraulic Resistance, diagrams 4-11 to 4-15 and 6-1',
    edition: '2006',
    read: 'in an open component library that cites it, partly from memory; values worked apart from this engine',
  },
  'iso-5167': {
    title: 'ISO 5167-2, orifice plates: permanent pressure loss',
    edition: 'edition not seen',
    read: 'discharge coefficient through the open fluids library, loss formula from memory',
  },
  blevins: {
    title: 'Blevins, Applied Fluid Dynamics Handbook, square-edged screens',
    edition: 'edition not seen',
    read: 'through the open fluids library',
  },
  rennels: {
    title: 'Rennels and Hudson, Pipe Flow, bends and mitres',
    edition: 'edition not seen',
    read: 'closed forms through the open fluids library',
  },
  miller: {
    title: 'Miller, Internal Flow Systems, bends',
    edition: 'edition not seen',
    read: 'through the open fluids library',
  },
  ito: {
    title: 'Ito, pressure losses in smooth pipe bends',
    edition: 'edition not seen',
    read: 'through the open fluids library',
  },
  fluids: {
    title: 'fluids, open Python library: Colebrook-White solved exactly',
    edition: '1.3.1',
    read: 'run for this table',
  },
  churchill: {
    title: 'Churchill, friction factor for all Reynolds numbers',
    edition: '1977',
    read: 'formula on two pages, values through the open fluids library',
  },
  poiseuille: { title: 'Laminar flow in a round pipe, f = 64/Re', edition: 'exact', read: 'closed form' },
  'abushakra-2004': {
    title: 'Abushakra, Walker and Sherman, HVAC&R Research 10(3), compressed flexible duct',
    edition: '2004',
    read: 'abstract, in several copies',
  },
  'abushakra-2002': {
    title: 'Abushakra, Walker and Sherman, ACEEE Summer Study, LBNL-49700',
    edition: '2002',
    read: 'abstract',
  },
  'weaver-2006': {
    title: 'Weaver and Culp, ESL-IC-06-11-133, and ASHRAE RP-1333',
    edition: '2006 and 2007',
    read: 'abstracts',
  },
  'cantrill-2013': {
    title: 'Cantrill, master’s thesis, Texas A&M, large flexible duct',
    edition: '2013',
    read: 'abstract',
  },
  hpac: {
    title: 'HPAC Engineering, article on flexible duct',
    edition: 'December 2010',
    read: 'opening of the article',
  },
  'moisture-1988': {
    title: 'Moisture Sources Associated with Potential Damage in Cold Climate Housing',
    edition: '1988',
    read: 'reprint of its table',
  },
  'solar-handbook': {
    title: 'A solar-housing handbook, table 10.1.1, moisture sources',
    edition: 'not seen',
    read: 'its figures in our notes',
  },
  coolprop: { title: 'CoolProp, open library: humid air', edition: 'current', read: 'run for this table' },
  cipm: {
    title: 'Picard, Davis, Glaser and Fujii, Metrologia 45, density of moist air (CIPM-2007)',
    edition: '2008',
    read: 'coefficients from memory, confirmed with CoolProp to 5e-5',
  },
  magnus: {
    title: 'Magnus formula over water, WMO guide',
    edition: 'edition not seen',
    read: 'coefficients from memory',
  },
  'en-12237': {
    title: 'Ductwork air tightness classes, EN 12237 and EN 16798-3',
    edition: 'edition not seen',
    read: 'coefficients on a ductwork page quoting the standard',
  },
  smacna: {
    title: 'SMACNA, HVAC Air Duct Leakage Test Manual, table 4-1',
    edition: 'edition not seen',
    read: 'reprinted in a test-equipment manual',
  },
  orifice: {
    title: 'Flow through a sharp-edged hole, discharge coefficient 0.6',
    edition: 'closed form',
    read: 'from memory',
  },
  'iso-5802': {
    title: 'ISO 5802, traverse depths, tables 2 and 3',
    edition: '2001',
    read: 'tables read; profile average worked in closed form',
  },
  'fan-noise': { title: 'AMCA and ASHRAE fan sound law', edition: 'edition not seen', read: 'from memory' },
  'flow-noise': {
    title: 'Lecture notes on fan and flow noise',
    edition: 'edition not seen',
    read: 'text read',
  },
  'cibse-b': {
    title: 'CIBSE Guide B, flow noise of duct fittings',
    edition: 'edition not seen',
    read: 'description of the formula read; value worked apart from this engine',
  },
  'mixed-room': {
    title: 'Humidity of a well-mixed room, exponential decay',
    edition: 'closed form',
    read: 'worked apart from this engine; Approved Document F (2021) para B9 assumes mixing too',
  },
  geometry: {
    title: 'Geometry: hanging curves and flattened rounds',
    edition: 'exact',
    read: 'worked apart from this engine',
  },
  borda: {
    title: 'Borda and Carnot, sudden widening',
    edition: 'closed form',
    read: 'classic table of area ratios',
  },
  cory: { title: 'Cory, Fans and Ventilation, weather caps', edition: 'edition not seen', read: 'web text' },
  scipy: {
    title: 'Fritsch and Carlson 1980, monotone cubic, as in SciPy',
    edition: 'current',
    read: 'run for this table',
  },
  epanet: {
    title: 'EPANET, open pipe network solver, through epanet-js 0.9.0',
    edition: '2.3.5',
    read: 'run for this table; it takes Swamee and Jain for friction where we take Colebrook',
  },
  gum: {
    title: 'JCGM 100, guide to uncertainty: sensitivity coefficients of the base case',
    edition: '2008',
    read: 'worked apart from this engine',
  },
  practice: {
    title: 'Common practice, no source',
    edition: 'none',
    read: 'heard from practice; nothing published was found',
  },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;
