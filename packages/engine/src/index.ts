export type { AssumedInput } from './cabinet/assumed-inputs.ts';
export { assumedInputs, inputLabel } from './cabinet/assumed-inputs.ts';
export type { Assumption } from './cabinet/assumption.ts';
export type { Cabinet, Edit, Option } from './cabinet/cabinet.ts';
export { type CareAction, type CareTask, careActions } from './cabinet/care.ts';
export { careTasksOf } from './cabinet/care-tasks.ts';
export { catalogueData } from './cabinet/catalogue.data.ts';
export type { Complaint, Span } from './cabinet/complaint.ts';
export { formatComplaint } from './cabinet/complaint.ts';
export type { DefaultName } from './cabinet/defaults.ts';
export { defaults } from './cabinet/defaults.ts';
export { editText } from './cabinet/edits.ts';
export { originAt } from './cabinet/ledger.ts';
export { limitKinds } from './cabinet/limits.ts';
export { nearest } from './cabinet/nearest.ts';
export type { NewCabinetAnswers } from './cabinet/new-cabinet.ts';
export { knownKinds, newCabinet } from './cabinet/new-cabinet.ts';
export type { Origin, Origins, Spread } from './cabinet/origin.ts';
export { originText } from './cabinet/origin-text.ts';
export type { Override } from './cabinet/overrides.ts';
export { overrideRegistry } from './cabinet/overrides.ts';
export type { Queue, QueueAim, QueueJob } from './cabinet/queue.ts';
export type { CabinetAnswer } from './cabinet/read-cabinet.ts';
export { readCabinet } from './cabinet/read-cabinet.ts';
export { cabinetSchema } from './cabinet/schema.ts';
export { setInput } from './cabinet/set-input.ts';
export type { CrossingsAnswer, NetworkAnswer, RunAnswer } from './day/network-answer.ts';
export { answerNetwork } from './day/network-answer.ts';
export type { FanPoints } from './day/operating-points.ts';
export { operatingPoints } from './day/operating-points.ts';
export type { Plant } from './day/plant.ts';
export { compile } from './day/plant.ts';
export type { ContaminantLedger, DayEvent, DayRecord, HeatLedger, Ledger, Table, Warning } from './day/record.ts';
export type { Extreme, Series } from './day/series.ts';
export {
  concentrationSeries,
  greatest,
  greatestMovingMean,
  integral,
  least,
  mean,
  resample,
  seriesOf,
  temperatureSeries,
  timeAbove,
  valueAt,
} from './day/series.ts';
export type { DayOptions } from './day/simulate-day.ts';
export { DayStopped, simulateDay, simulatePlant } from './day/simulate-day.ts';
export type { FlowSolution } from './day/solve-flows.ts';
export { solveFlows } from './day/solve-flows.ts';
export { type Extents, type JobAnswer, type JobRules, type JobSummary, type SetPoint, usualRules } from './jobs/job.ts';
export { durationText, entryKeys, entryText, type JobEntry } from './jobs/job-entry.ts';
export type { JobCheck } from './jobs/job-on-machine.ts';
export { type JobKnown, type JobReport, jobReport, materialsOf, rulesOn, USUAL_DIAMETER } from './jobs/job-report.ts';
export { endJob, type OpenJob, openJob, takeBytes } from './jobs/read-job.ts';
export { FEWEST_SAMPLES } from './judge/bands.ts';
export type { BriefFinding, Finding, Tried, Verdict } from './judge/finding.ts';
export { briefByValue, inBrief } from './judge/in-brief.ts';
export type { Judgement, JudgeOptions, ReadSource } from './judge/judge.ts';
export { judge } from './judge/judge.ts';
export {
  askDay,
  askStanding,
  measureDays,
  type RunDay,
  runDay,
  runDayKept,
  warningsOf,
} from './judge/pipeline.ts';
export type { Remark, Remarks } from './judge/remarks.ts';
export { remarksOn } from './judge/remarks.ts';
export type { SpreadFrom } from './judge/spread-from.ts';
export { spreadFrom } from './judge/spread-from.ts';
export type { CabinetSource, Evaluate, Outcome, Variant } from './judge/variants.ts';
export { variantRunner } from './judge/variants.ts';
export { dialReadings } from './logs/dial.ts';
export { placedColumn, shiftOf, withReadings } from './logs/given-log.ts';
export type { Log, LogColumn, LogFault, LogKind, LogRemark, Reading } from './logs/log.ts';
export { type Place, placeText } from './logs/places.ts';
export { type LogOptions, readLog } from './logs/read-log.ts';
export { assemble } from './network/assemble.ts';
export type { Assembly } from './network/assembly.ts';
export type { Network } from './network/network.ts';
export type { Analysis, NetworkFile, NetworkRun } from './network/read-network.ts';
export { readNetwork } from './network/read-network.ts';
export { writeNetwork } from './network/write-network.ts';
export { careCalendar } from './papers/care-calendar.ts';
export { csvCell } from './papers/csv-cell.ts';
export {
  type CourseOutcome,
  type CourseTask,
  courseRunner,
  type DayBands,
  type DayBandsOptions,
  dayBands,
  type EvaluateCourses,
  type LineBand,
  type LineCourse,
} from './papers/day-bands.ts';
export type { Band, Bar, Level, Line, Mark, Panel, Pen, Strip, Wording } from './papers/day-panels.ts';
export { dashes, dayPanels, dayStrips } from './papers/day-panels.ts';
export { dayPicture } from './papers/day-picture.ts';
export type { DayColumn, DayRow, DayTable } from './papers/day-table.ts';
export { dayTable } from './papers/day-table.ts';
export { driftPicture } from './papers/drift-picture.ts';
export { type Fill, type LineKind, lineLooks, type Mark as SheetMark, type TextMark } from './papers/frame/mark.ts';
export type { Cells, FormatName, Item, Page } from './papers/frame/page.ts';
export { GREY, INK, pageSvg, SHADE } from './papers/frame/page-svg.ts';
export { textWidth } from './papers/frame/text-width.ts';
export { frontPicture } from './papers/front-picture.ts';
export { logPicture } from './papers/log-picture.ts';
export {
  type Angle,
  angles,
  type FlatFile,
  type FlatShape,
  type Paper,
  type PaperFile,
  type PaperInput,
  type SolidFile,
} from './papers/paper.ts';
export { type MadePaper, makePaper, papers } from './papers/papers.ts';
export { planCalendar } from './papers/plan-calendar.ts';
export { type PlanNames, planPicture } from './papers/plan-picture.ts';
export { type CalledFor, partsCalledFor } from './papers/printed/called-for.ts';
export { materialFor } from './papers/printed/material.ts';
export { type Piece, printingOf } from './papers/printed/pieces.ts';
export type { NotDrawn, PrintedPart } from './papers/printed/printed-part.ts';
export type { Shape } from './papers/printed/shape.ts';
export { recordCsv } from './papers/record-csv.ts';
export { type SheetDay, sheetDay } from './papers/sheet-day.ts';
export { openFindings, spreadPicture } from './papers/spread-picture.ts';
export type { Ageing } from './running/ageing.ts';
export { appendEntry, type Entry, type EntryList, entryLine, newDiary } from './running/append-diary.ts';
export { CARE_SAMPLES, type CareOptions, type CareRow, type CareStudy, care } from './running/care.ts';
export type { Criterion, DueBy } from './running/care-due.ts';
export { type Conflict, conflictHead, type Demand } from './running/conflict.ts';
export type { CostRow } from './running/cost-rows.ts';
export type { Deed, Diary, DoneEntry, JobRun } from './running/diary.ts';
export { DONE_WORDS } from './running/diary-schema.ts';
export { dueByText, dueText } from './running/due-text.ts';
export { type MonthCost, type MonthOptions, monthCost } from './running/month-cost.ts';
export { type MovedJob, movedHead, movedText } from './running/moved.ts';
export {
  type NewJob,
  PART_SAMPLES,
  type PartCost,
  type PartCostOptions,
  type PartCosts,
  partCosts,
} from './running/part-cost.ts';
export type {
  EvaluatePlan,
  KeptStart,
  Plan,
  PlanAim,
  PlannedJob,
  PlanOptions,
  PlanOutcome,
  PlanTask,
} from './running/plan.ts';
export { PLAN_NODES, plan, planRunner } from './running/plan.ts';
export {
  QUEUE_COST_SAMPLES,
  type QueueCostOptions,
  type QueueCosts,
  type QueuePart,
  queueCosts,
} from './running/queue-cost.ts';
export {
  type OpenedJobFile,
  type QueueFilesAnswer,
  type QueueFilesOptions,
  readQueueFiles,
} from './running/queue-files.ts';
export { queueAsDays, type Trial, type TrialTask } from './running/queue-trial.ts';
export { type DiaryAnswer, deedOf, readDiary } from './running/read-diary.ts';
export type { JobShutOff, MachineSwitch, SharedStrip, ShutOffOptions, ShutOffs } from './running/shut-off.ts';
export { shutOffs } from './running/shut-off.ts';
export { SHUT_OFF_CAUTION } from './running/shut-off-limits.ts';
export type { Cut } from './running/week.ts';
export type { PlanCheck, PlanHour } from './running/week-run.ts';
export type { Why } from './running/why.ts';
export { answerOf } from './studies/answer.ts';
export type { BestFor } from './studies/best-for.ts';
export type {
  CalibratedColumn,
  CalibratedUnknown,
  CalibrateOptions,
  CalibrationStudy,
} from './studies/calibrate/calibrate.ts';
export { calibrate } from './studies/calibrate/calibrate.ts';
export type { EvaluateLog, LogOutcome, LogPlan, LogTask } from './studies/calibrate/expected.ts';
export { logRunner } from './studies/calibrate/expected.ts';
export { type InventedColumn, type Invention, inventedLog } from './studies/calibrate/invented-log.ts';
export { remarkText, sizeText, unknownText } from './studies/calibrate/log-words.ts';
export { knownUnknowns, unknownNamed } from './studies/calibrate/unknowns.ts';
export { catchText } from './studies/catch-text.ts';
export type { Cell, CompareOptions, Comparison, Row, Sheet } from './studies/compare.ts';
export { AS_IT_STANDS, compare } from './studies/compare.ts';
export {
  type DriftColumn,
  type DriftOptions,
  type DriftStudy,
  drift,
} from './studies/drift/drift.ts';
export { driftAdvice, driftAlarmText, driftOpeningText, driftVerdictText } from './studies/drift/drift-words.ts';
export type { Effect } from './studies/effects.ts';
export type { Fault, FaultKind } from './studies/fault.ts';
export { faultsOf } from './studies/fault-list.ts';
export type { Catch, Caught, FaultOptions, FaultRow, FaultStudy } from './studies/faults.ts';
export { faults } from './studies/faults.ts';
export type { Miss, PareOptions, PareRow, Paring } from './studies/pare.ts';
export { pare, savesText } from './studies/pare.ts';
export type { EvaluateFaults, FaultOutcome, FaultTask } from './studies/run-fault.ts';
export { faultRunner } from './studies/run-fault.ts';
export { withFree } from './studies/search/free-words.ts';
export type { EvaluateSearch, SearchOutcome, SearchTask } from './studies/search/run-search.ts';
export { searchRunner } from './studies/search/run-search.ts';
export type { SearchOptions, SearchProgress } from './studies/search/search.ts';
export { SEARCH_MOST, search } from './studies/search/search.ts';
export type { NextStep, SearchStudy, SearchVariant } from './studies/search/search-study.ts';
export type { CloseLimit, NamedLimit, Undone } from './studies/search/why.ts';
export type { AgainstAssumed, Settling } from './studies/settling.ts';
export type { Severity } from './studies/severity.ts';
export { severities } from './studies/severity.ts';
export type { Estimate, EstimatedBand } from './studies/spread/estimate.ts';
export type { FindingSpread } from './studies/spread/finding-spread.ts';
export type { Helped, Measurement } from './studies/spread/measuring.ts';
export type { OptionDifference, OptionSpread } from './studies/spread/option-differences.ts';
export type { SpreadOptions, SpreadStudy } from './studies/spread/spread.ts';
export { SPREAD_SAMPLES, spread } from './studies/spread/spread.ts';
export type { TotalShare, TotalShares } from './studies/spread/total-shares.ts';
export type { SummaryCell, SummaryRow } from './studies/summary.ts';
export type { Want, WantRule } from './studies/wants.ts';
export { comesToText, wantRules } from './studies/wants.ts';
export { type Part as MachinePart, stackHeight } from './trades/machine-solids.ts';
export {
  type DayRun,
  type Limit,
  type Measure,
  type Remedy,
  STANDING,
  type Step,
  type Trade,
} from './trades/measure.ts';
export { clearBay, type StandingMachine, standingIn } from './trades/standing-machines.ts';
export { addMonths, dayNumber, formatDate, parseDate, parsePeriod } from './units/calendar.ts';
export { dailyProfile, parseClock, parseWindow } from './units/clock.ts';
export type { UnitSystem } from './units/format.ts';
export {
  formatBand,
  formatClock,
  formatDuration,
  formatNumber,
  formatNumberBeside,
  formatQuantity,
  shownUnitName,
} from './units/format.ts';
export type { Money } from './units/money.ts';
export { parseMoney } from './units/money.ts';
export type { Quantity, TextFault } from './units/quantity.ts';
export { isFault, parsePlace, parseQuantity, parseRange, parseSizes } from './units/quantity.ts';
export type { KindName } from './units/unit-table.ts';
export { kindNames, kindOf } from './units/unit-table.ts';
export { formatDatedMoment, formatDay, formatMoment, type Moment, momentAfter, parseMoment } from './units/week.ts';
export { listed, percentText, rangeText } from './units/words.ts';
