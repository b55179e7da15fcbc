/**
 * What the tool calculates, part of `core/computations.ts`. Hands, paper, the schedule and money.
 */
import { BY_DEFINITION, PRACTICE } from "../knowledge/sources.ts";
import type { Computation } from "./computation.ts";

const TOTALS = "`totals`, hover of the job";

export const COMPUTATIONS_OF_WORK: readonly Computation[] = [
  {
    topic: "Hands and paper",
    name: "Hands-on time",
    seen: "`totals`, `schedule`; the figures in [hands-on times](hands-on-times.md)",
    formula:
      "as stated (`takes`, for a piece's surface and a coat, or by area); else fixed minutes + minutes by m2, by verb or method, rounded up to five minutes",
    source: PRACTICE,
    file: "quantities/abrasives.ts",
    functions: ["defaultTaskHours", "defaultTaskParts", "taskTime"],
    tests: ["core/quantities/abrasives.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Hands-on hours of a job",
    seen: TOTALS,
    formula:
      "the hours of all steps and layers · pieces; in a shop with a start, the minutes on every piece and the fixed minutes once a session, estimates of a session rounded up to five minutes",
    source: BY_DEFINITION,
    file: "totals/task-plan.ts",
    functions: ["actionHours", "handsOnHours", "areHoursEstimated", "hoursOnPiece", "workInSessions"],
    tests: ["core/totals/time.test.ts", "core/totals/money.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Hours of one coat on all pieces, beside the pot life",
    seen: "`pot-life-overrun`",
    formula:
      "pieces · time of one, shared by the crew and rounded up to whole pieces; an estimate has its fixed minutes once and is rounded up to five minutes",
    source: BY_DEFINITION,
    file: "totals/task-plan.ts",
    functions: ["coatHoursOnAll"],
    tests: ["core/totals/coat-hours.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Amounts, hours and stock by the record",
    seen: "`totals` and `shopping` of a job with `done` lines",
    formula:
      "what was used and how long it took as recorded, in place of what was planned for it; several surfaces share a line by area, several steps by their planned hours; hours that are not stated are those of the plan as it was before, in sessions; stock now = stock before + cans − used",
    source: BY_DEFINITION,
    file: "totals/recorded-amounts.ts",
    functions: ["recordedNeeds", "recordedHours", "hoursTaken"],
    tests: ["core/record/carried-through.test.ts", "core/record/planned-hours.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Plan of what is left",
    seen: "`schedule`, sheets and dates of a job with `done` lines",
    formula:
      "the rest is planned from the last record; a wait that counts from what was done ends at its time + the wait",
    source: BY_DEFINITION,
    file: "totals/recorded-plan.ts",
    functions: ["begunOf", "leftToPlan", "withDone"],
    tests: ["core/record/carried-through.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Abrasive paper",
    seen: "`totals` and `shopping` as text, an estimate",
    formula:
      "passes of a grit · area · pieces / m2 a sheet sands at that grit, rounded up; a 125 mm disc is 0.19 of a sheet",
    source: PRACTICE,
    file: "quantities/abrasives.ts",
    functions: ["abrasiveUse", "m2PerSheet"],
    tests: ["core/quantities/abrasives.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Paper and sanding hours of a job",
    seen: "`totals` and `shopping` as text, an estimate",
    formula: "by grit over all steps and coat blocks; a step's hours are divided evenly among its grits",
    source: PRACTICE,
    file: "totals/paper.ts",
    functions: ["jobPaper"],
    tests: ["core/totals/paper.test.ts", "cli/estimates.test.ts"],
  },

  {
    topic: "Schedule",
    name: "What is planned",
    seen: "`schedule`, `totals`",
    formula:
      "one chain for every surface of every piece: steps, layers, waits; a wait counts from the last layer or filling; a coat within the window of the coat below",
    source: BY_DEFINITION,
    file: "totals/task-plan.ts",
    functions: ["scheduleInput", "recoatWindow", "waitsAreKnown", "hoursAreKnown"],
    tests: ["core/totals/time.test.ts", "core/properties/schedules.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Earliest finish",
    seen: "`schedule`, `totals`: `elapsed_h`, `finish`",
    formula:
      "hands within opening hours and crew, layers in one go where they fit, drying day and night; priority rules with random variation, plans from column generation, then branch and bound that betters or proves the plan",
    source:
      "resource-constrained project scheduling (Kolisch and Hartmann, 1999, from memory), checked against brute force",
    file: "schedule/schedule.ts",
    functions: ["schedule"],
    tests: [
      "core/schedule/schedule.test.ts",
      "core/schedule/properties.test.ts",
      "core/properties/schedules.test.ts",
    ],
  },
  {
    topic: "Schedule",
    name: "Sessions",
    seen: "`schedule`, `totals`: `elapsed_h`, `finish`",
    formula:
      "in a shop, equal steps in one go: fixed minutes once, then each task; in one opening, starts and ends on five minutes, waits rounded up, windows down, no longer than pot life; best by days late, last work, sum of the jobs' last works, last end, sessions, changes of material",
    source:
      "scheduling with batching (Potts and Kovalyov, 2000, from memory), iterated local search; checked by an independent verifier and an independent search",
    file: "schedule/sessions/plan-sessions.ts",
    functions: ["planSessions"],
    tests: ["core/schedule/sessions.test.ts", "core/properties/schedules.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Jobs of one shop",
    seen: "`schedule`, `totals`: `elapsed_h`, `finish`",
    formula:
      "jobs whose last work, alone or by the sum of their work, is not done when another begins are planned together: each from its `start` on and after the jobs that it comes after; later than alone = last work in the plan of the shop − last work alone; it waits for what people do meanwhile on other jobs",
    source: BY_DEFINITION,
    file: "totals/shop-plans.ts",
    functions: ["createShops"],
    tests: ["core/schedule/shop-plans.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Lower bound and gap",
    seen: "`schedule`",
    formula:
      "no plan beats each chain alone, nor the crew's work that must lie between two moments: all of it, tasks in one go opening by opening, long ones by number; gap = (elapsed − bound) / bound",
    source: "energetic reasoning of resource-constrained scheduling, checked against brute force",
    file: "schedule/bounds/energetic-bound.ts",
    functions: ["energeticBound", "hasRoom"],
    tests: ["core/schedule/bounds.test.ts", "core/schedule/properties.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Lower bound by prices",
    seen: "`schedule`",
    formula:
      "a finish is too early when, at some prices for the parts of the openings, the cheapest assignments of all chains cost more than all there is; windows tie a chain's tasks to openings that lie near enough",
    source:
      "duality of linear programs (Farkas), Dantzig–Wolfe column generation; checked against brute force and a solver",
    file: "schedule/optimise/column-generation.ts",
    functions: ["solveMaster"],
    tests: ["core/schedule/bounds.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Slack and the critical path",
    seen: "`schedule`",
    formula:
      "the latest times that keep the finish and the crew's order, less the planned ones; critical where none is left",
    source:
      "critical path method: Heizer and Render, Operations Management, chapter 3, and Taylor, Introduction to Management Science, chapter 8, exercises with their printed answers (editions not named)",
    file: "schedule/float.ts",
    functions: ["floatOf"],
    tests: ["core/schedule/properties.test.ts", "core/schedule/network.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Opening hours and overnight",
    seen: "`schedule`",
    formula:
      "overnight: to the next morning at which the shop is open, its opening or 12 h away, the later; wait 9 h until after closing: to the opening as well; open day and night 12 h; without a shop 16 h",
    source: BY_DEFINITION,
    file: "schedule/calendar.ts",
    functions: ["nightEnd", "minimumOvernightHours", "minimumClosedHours", "pausesBetween"],
    tests: ["core/schedule/calendar.test.ts", "core/totals/time.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Drying by day and by night",
    seen: "every wait `until` in a shop with `night_air`",
    formula:
      "dried = hours open / time by day + hours closed / time by night, evenly in both; the longest that begins while the shop is open, where it does not dry in one night; pauses under 6 h are part of the day",
    source: PRACTICE,
    file: "schedule/drying-nights.ts",
    functions: ["hoursThroughNights"],
    tests: ["core/schedule/drying-nights.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Last work, light use, full use",
    seen: "`schedule`, `totals`, hover and lens of the job, `in-service-before-cure`",
    formula:
      "the end of the last task; a day, or the time to the next coat where that is longer, after the last coat of every surface, or its cure if that is sooner; end of the last layer + its full cure · wait factor; none before the last work",
    source:
      "common practice, no source: a day before anything is set down on a coat; the cure is the label's",
    file: "totals/use-dates.ts",
    functions: ["useDates", "fewestCoatDates", "lightUseAfter", "fullUseAfter"],
    tests: ["views/job-dates.test.ts", "core/totals/time.test.ts", "views/bench-list.test.ts"],
  },

  {
    topic: "Money",
    name: "Cost of materials",
    seen: "`totals`, `shopping`",
    formula:
      "containers · price; null where one is not known; a job after another starts from what that left",
    source: BY_DEFINITION,
    file: "totals/job-totals.ts",
    functions: ["createTotaller"],
    tests: ["core/totals/materials.test.ts", "core/totals/money.test.ts"],
  },
  {
    topic: "Money",
    name: "What steps cost",
    seen: "`totals`, hover of the job",
    formula: "supplies of the job + Σ `costs` of a step · pieces of its surface",
    source: BY_DEFINITION,
    file: "totals/supplies.ts",
    functions: ["stepCosts", "suppliesOf"],
    tests: ["core/totals/money.test.ts"],
  },
  {
    topic: "Money",
    name: "Labour, total and saving",
    seen: "`totals`, `over-budget`",
    formula:
      "labour = hands-on · rate; supplies = those of the job + Σ costs of a step · pieces; total = materials + labour + supplies + pieces as bought; saving = new ones − total",
    source: BY_DEFINITION,
    file: "totals/job-totals.ts",
    functions: ["createTotaller"],
    tests: ["core/totals/money.test.ts"],
  },
  {
    topic: "Money",
    name: "What an hour of the work earns",
    seen: "`totals` as text, hover of the job",
    formula: "(saving + labour) / hands-on",
    source: BY_DEFINITION,
    file: "totals/earned.ts",
    functions: ["earnedPerHour"],
    tests: ["core/totals/earned.test.ts"],
  },
  {
    topic: "Money",
    name: "Whether it is worth it",
    seen: "`totals`, the bench view",
    formula:
      "left = money in − money out − hands-on · rate; out: pieces as bought, with materials and supplies where they are redone, or new ones; in: what they sell for; an hour where they are sold: (in − out) / hands-on",
    source: BY_DEFINITION,
    file: "totals/worth.ts",
    functions: ["waysOf", "soldPerHour"],
    tests: ["core/totals/worth.test.ts"],
  },
  {
    topic: "Money",
    name: "Litres left over",
    seen: "`totals` as text",
    formula: "max(0, on hand + bought − used)",
    source: BY_DEFINITION,
    file: "totals/earned.ts",
    functions: ["litresLeftOver", "litresForLater"],
    tests: ["core/totals/earned.test.ts"],
  },
  {
    topic: "Money",
    name: "Parts that add up",
    seen: "`totals` as text, hover of the job",
    formula:
      "every printed part rounded down; the units missing from the rounded sum go to the parts that lost most",
    source:
      "M. L. Balinski, H. P. Young, Fair Representation (1982), the method of largest remainders; from memory",
    file: "measure/rounded-parts.ts",
    functions: ["roundedParts"],
    tests: ["core/measure/rounded-parts.test.ts", "reports/sums.test.ts"],
  },
  {
    topic: "Money",
    name: "Materials by what is used",
    seen: "`totals` as text, hover of the job",
    formula:
      "Σ litres · price of a litre in the containers bought; where all is on hand, in the size cheapest by the litre",
    source: "common practice, no source: used material at its purchase price",
    file: "totals/piece-costs.ts",
    functions: ["usedMaterialCost"],
    tests: ["core/totals/piece-costs.test.ts"],
  },
  {
    topic: "Money",
    name: "Cost of one piece",
    seen: "`totals` as text, hover of the job",
    formula:
      "materials by its share of the litres + its hands-on hours · rate + an even share of the supplies + what it cost; times the pieces these add up to the total",
    source: "our own choice of shares",
    file: "totals/piece-costs.ts",
    functions: ["pieceCosts"],
    tests: ["core/totals/piece-costs.test.ts"],
  },
  {
    topic: "Money",
    name: "Rounding for print",
    seen: "`totals --format json`",
    formula: "lengths, litres, hours and grams to six decimals, money to cents",
    source: "our own choice",
    file: "totals/print.ts",
    functions: ["printedTotals"],
    tests: ["core/totals/money.test.ts"],
  },
];
