/**
 * Every field of a shop and of a job: right, of a wrong unit, out of range, misspelt, repeated or left out.
 * What stands behind each line is the rule with the text that it stands on; nothing where the line is right.
 */
import { describe, expect, it } from "vitest";
import { findingsOf } from "../harness/check-text.ts";
import { findingsIn } from "./blocks.ts";

describe("how many pieces", () => {
  const messages = (count: string) =>
    findingsOf(
      `piece p {\n surface s {\n  shape area 1 m2\n  wood beech\n }\n}\nrecipe r {\n step dust\n}\njob j {\n piece p x ${count}\n apply r to s\n}\n`,
    ).map(({ rule }) => rule);

  it.each(["1", "12", "10000"])("%s of them", (count) => expect(messages(count)).toEqual([]));
  it.each(["0", "-2", "1.5", "10001"])("%s is no number of pieces", (count) =>
    expect(messages(count)).toEqual(["bad-number"]),
  );
  it("has no unit", () => expect(messages("2 m")).toEqual(["wrong-unit"]));
});

describe("hours of a shop that cannot be read", () => {
  const rules = (hours: string) =>
    findingsOf(
      `shop s {\n hours ${hours}\n}\npiece p {\n surface t {\n  shape area 1 m2\n  wood beech\n }\n}\nrecipe r {\n step clean with soap, takes 20 h\n}\njob j {\n piece p\n in s\n start 2027-03-08 09:00\n ready 2027-03-09\n apply r to t\n}\n`,
    ).map(({ rule }) => rule);

  // 20 h of work from Monday morning on end on Wednesday, a day after the one wanted.
  it("are read as they stand", () => expect(rules("Mon to Fri 09:00 to 17:00")).toEqual(["late"]));
  // Nothing is planned by the part that can be read: one slip, one finding.
  it.each([
    ["Mon to Fri 17:00 to 09:00", "bad-number"],
    ["Mon to Fri 09:00 to 25:00, Sat 09:00 to 10:00", "bad-number"],
    ["Mo to Fri 09:00 to 17:00", "unknown-word"],
    ["Mon to Fri 09:00 to", "syntax"],
  ])("%s is one slip", (hours, rule) => expect(rules(hours)).toEqual([rule]));
});

describe("shop", () => {
  it.each([
    ["country US", ""],
    ["country united kingdom", ""],
    ['country "Côte d\'Ivoire"', ""],
    ["country Atlantis", 'unknown-word "Atlantis"'],
    ["country EU", 'unknown-word "EU"'],
    ["country US, CA", 'syntax "CA"'],
    ["country", 'syntax ""'],
    ["air 18 C, 60 % RH", ""],
    ["air 18 C", ""],
    ["air 60 % RH", ""],
    ["air 18 C to 20 C, 60 % RH", ""],
    ["air 18 C, 60 %", ""],
    ["air 18, 60 % RH", 'wrong-unit "18"'],
    ["air 18 C, 0 % RH", ""],
    ["air 18 C, 100 % RH", ""],
    ["air 18 C, 101 % RH", 'bad-number "101 %"'],
    ["air -300 C, 10 % RH", 'bad-number "-300 C"'],
    ["air 65 F, 50 % RH", ""],
    ["air 18 C, 60 % RH\n night_air 8 C, 80 % RH", ""],
    ["air 18 C\n night_air 46 F", ""],
    ["air 18 C\n night_air 8 C, 101 % RH", 'bad-number "101 %"'],
    ["air 18 C\n night_air 8", 'wrong-unit "8"'],
    ["night_air 8 C", 'missing-field "night_air 8 C"'],
    ["air 18\n night_air 8 C", 'wrong-unit "18"'],
    ["air 18 C\n night air 8 C", 'unknown-field "night"'],
    ["room 45 m3, 2 air changes/h", ""],
    ["room 45 m3", ""],
    ["room 45 m2", 'wrong-unit "45 m2"'],
    ["room 0 m3", 'bad-number "0 m3"'],
    ["room 1500 ft3, 1 air change/h", ""],
    ["room 45 m3, 90 m3/h", 'wrong-unit "90 m3/h"'],
    ["room 45 m3, 50 cfm", 'wrong-unit "50 cfm"'],
    ["room 45 m3, 2", 'wrong-unit "2"'],
    ["room 45 m3, 2 h", 'wrong-unit "2 h"'],
    ["room 2 air changes/h", 'warning not-counted "room 2 air changes/h"'],
    ["hours Mon to Fri 09:00 to 17:00, Sat 09:00 to 13:00", ""],
    ["hours Mon to Fri 9:00 to 17:00", ""],
    ["hours Mon to Fri 17:00 to 09:00", 'bad-number "Mon to Fri 17:00 to 09:00"'],
    ["hours Mon to Fri 09:00 to 09:00", 'bad-number "Mon to Fri 09:00 to 09:00"'],
    ["hours Mon to Fri 09:00 to 25:00", 'bad-number "25:00"'],
    ["hours Mon to Fri 09:60 to 17:00", 'bad-number "09:60"'],
    ["hours Mon to Fri 00:00 to 24:00", ""],
    ["hours Monday to Fri 09:00 to 17:00", ""],
    ["hours mon to fri 09:00 to 17:00", ""],
    ["hours Fri to Mon 09:00 to 17:00", ""],
    ["hours Mon to Fri 09:00 to 17:00, Fri 16:00 to 20:00", 'bad-number "Fri 16:00 to 20:00"'],
    ["hours Mon to Fri 09:00 to 12:00, Mon to Fri 13:00 to 17:00", ""],
    ["hours Mon, Tue 09:00 to 17:00", ""],
    ["hours Mon 9 to 5", 'syntax "9 to 5"'],
    ["hours 09:00 to 17:00", 'syntax "09:00"'],
    ["hours Mon to Fri", 'warning not-counted "hours Mon to Fri"'],
    ["closed 2027-03-26", ""],
    ["closed 2027-02-30", 'bad-number "2027-02-30"'],
    ["closed 2027-13-01", 'bad-number "2027-13-01"'],
    ["closed 2027-3-26", 'syntax "2027"'],
    ["closed 26.03.2027", ""],
    ["closed 2027-12-24 to 2028-01-02", ""],
    ["closed 2027-12-24 to 2026-01-02", 'bad-number "2027-12-24 to 2026-01-02"'],
    ["closed 2027-03-26, 2027-03-29", ""],
    ["closed Mon", 'syntax "Mon"'],
    ["closed 2027-03-26\n closed 2027-03-29", ""],
    ["crew 1", ""],
    ["crew 0", 'bad-number "0"'],
    ["crew 1.5", 'bad-number "1.5"'],
    ["crew -1", 'bad-number "-1"'],
    ["crew two", 'syntax "two"'],
    ["crew 2 people", ""],
    ["labour 18.00 per h", ""],
    ["labour 18.00", ""],
    ["labour 18.00 per day", 'wrong-unit "day"'],
    ["labour -18.00 per h", 'bad-number "-18.00"'],
    ["labour 18.00 per hour", ""],
    ["labour 18.00 EUR per h", ""],
    ["currency EUR", ""],
    ["currency euros", ""],
    ['currency "EUR"', ""],
    ["currency EUR, USD", 'syntax "USD"'],
    ["ignition none", ""],
    ["ignition pilot light", ""],
    ["ignition candle", 'warning may-be-several "candle"'],
    ["ignition heater, welding", 'syntax "welding"'],
    ["wear hard", 'warning not-counted "wear hard"'],
  ])("%j: %s", (line, right) => {
    expect(findingsIn("shop", line)).toBe(right);
  });
});

describe("job", () => {
  it.each([
    ["in h", ""],
    ["in nowhere", 'unknown-name "nowhere"'],
    ["in p", 'unknown-name "p"'],
    ["in", 'syntax ""'],
    ["start 2027-03-08", ""],
    ["start 2027-03-08 09:00", ""],
    ["start 2027-02-29", 'bad-number "2027-02-29"'],
    ["start 2028-02-29", ""],
    ["start 2027-03-08 25:00", 'bad-number "25:00"'],
    ["start 08:00", 'syntax "08:00"'],
    ["start Monday", ""],
    ["start 2027-03-08, 09:00", 'syntax ", 09:00"'],
    ["start 2027-03-08T09:00", 'syntax "T09:00"'],
    ["ready 2027-04-16", ""],
    ["ready 2027-04-31", 'bad-number "2027-04-31"'],
    ["ready 2027-04-16 12:00", ""],
    ["budget 260", ""],
    ["budget -1", 'bad-number "-1"'],
    ["budget 0", ""],
    ["budget 260 EUR", ""],
    ["spare 10 %", ""],
    ["spare 10", 'wrong-unit "10"'],
    ["spare -1 %", 'bad-number "-1 %"'],
    ["spare 0 %", ""],
    ["spare 150 %", 'bad-number "150 %"'],
    ["spare 10 m2", 'wrong-unit "10 m2"'],
    ["supplies 18.50", ""],
    ["supplies -1", 'bad-number "-1"'],
    ["supplies 18.505", 'bad-number "18.505"'],
    ["after nothing", 'unknown-name "nothing"'],
    ["after j", 'follow-cycle "j"'],
    ["piece p x 2", 'repeated-field "piece p x 2"'],
    ["piece nothing", 'unknown-name "s"; unknown-name "nothing"'],
    ["deadline 2027-01-01", ""],
    ["until 2027-01-01", 'warning not-counted "until 2027-01-01"'],
    ["in h\n in h", 'repeated-field "in"'],
    ["start 2027-03-08\n start 2027-03-09", 'repeated-field "start"'],
    ["wear hard", 'warning not-counted "wear hard"'],
  ])("%j: %s", (line, right) => {
    expect(findingsIn("job", line)).toBe(right);
  });
});

describe("job without apply", () => {
  it.each([
    ["apply q(c: oil_varnish) to s", ""],
    ["apply q(c: oil_varnish) to all", ""],
    ["apply q(c: oil_varnish) to nothing", 'unknown-name "nothing"'],
    ["apply q(c: oil_varnish) to p.s", ""],
    ["apply q(c: oil_varnish) to p.t", 'unknown-name "t"'],
    ["apply q(c: oil_varnish) to o.s", 'unknown-name "o"'],
    ["apply q(c: oil_varnish) to s, s", ""],
    ["apply q(c: oil_varnish) to all, s", ""],
    ["apply q(c: oil_varnish) to", 'syntax ""'],
    ["apply q(c: oil_varnish)", ""],
    ["apply q to s", 'missing-argument "q"'],
    ["apply q() to s", 'missing-argument "q()"'],
    ["apply nothing to s", 'unknown-name "nothing"'],
    ["apply q(c: nothing) to s", 'unknown-name "nothing"'],
    ["apply q(c: oil_varnish, n: 3, d: 2 h) to s", ""],
    ["apply q(c: oil_varnish, n: 3 h) to s", 'wrong-unit "3 h"'],
    ["apply q(c: oil_varnish, n: 1.5) to s", 'bad-number "1.5"'],
    ["apply q(c: oil_varnish, d: 3) to s", 'wrong-unit "3"'],
    ["apply q(c: oil_varnish, d: 3 mm) to s", 'wrong-unit "3 mm"'],
    ["apply q(c: oil_varnish, d: -3 h) to s", 'bad-number "-3 h"'],
    ["apply q(c: oil_varnish, d: n) to s", 'wrong-argument "n"'],
    ["apply q(c: q) to s", 'unknown-name "q"'],
    ["apply p to s", 'unknown-name "p"'],
    ["apply q(c: oil_varnish) to s,\n apply q(c: oil_varnish) to s", 'syntax ","'],
    ["apply q(c: oil_varnish,\n   n: 2) to s", ""],
    ["apply q(\n c: oil_varnish\n ) to s", 'syntax ""; unknown-field "c"; syntax ")"'],
    [" ", 'missing-field "job j"'],
  ])("%j: %s", (line, right) => {
    expect(findingsIn("job without apply", line)).toBe(right);
  });
});
