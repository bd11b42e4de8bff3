//! Every bound of the bot in one place, each with its reason.
//!
//! Nothing grows without a limit: what comes from outside is refused or cut at one of these.
//! Deliberately absent: what a person may set (that is `config`) and what the handbook says.

use std::time::Duration;

/// The body of a request to us. A notification of one text is under 2 KiB; this leaves room for
/// a list, and is small enough to hold one for each open connection.
pub const BODY_BYTES_MAX: usize = 64 * 1024;

/// The body of a gateway's answer. It carries at most one address.
pub const ANSWER_BYTES_MAX: usize = 16 * 1024;

/// Texts or receipts in one notification. All of them are made durable before it is answered.
pub const NOTIFICATION_ITEMS_MAX: usize = 100;

/// Characters of one text. Ten parts hold 1,530 septets; phones join no more in practice.
pub const TEXT_CHARS_MAX: usize = 1_600;

/// Characters of a phone number, sender name or other address. E.164 has 15 digits; the rest is
/// for addresses with a scheme.
pub const ADDRESS_CHARS_MAX: usize = 64;

/// Bytes of an id that a gateway gives. It becomes part of a key in the store.
pub const GATEWAY_ID_BYTES_MAX: usize = 255;

/// Bytes of a gateway's name. It is in every record of a text, in a path and in variables.
pub const GATEWAY_NAME_BYTES_MAX: usize = 16;

/// Gateways of one service: a line for each network of a country, and some to spare.
pub const GATEWAYS_MAX: usize = 32;

/// Bytes of the code in a provider's refusal. The standard's own have seven.
pub const REFUSAL_CODE_BYTES_MAX: usize = 16;

/// Bytes of the word with which a receipt tells how far a text came. The standard's own longest has
/// 32.
pub const STATUS_BYTES_MAX: usize = 40;

/// Blocks that one wake looks at. Some milliseconds of stepping; more would make texts that come
/// meanwhile wait.
pub const WAKE_BLOCKS: usize = 1_024;

/// Inputs that wait for the engine. When it is full we answer "busy", and the gateway sends again.
pub const QUEUE_MAX: usize = 1_024;

/// Steps that share one flush of the disk. More makes the first of them wait too long.
pub const BATCH_MAX: usize = 256;

/// Batches that are stepped and wait for the disk. When it is that far behind, stepping waits too.
pub const STEPPED_MAX: usize = 64;

/// Facts that are stepped and not in the store. Above this stepping waits for the disk, so that
/// every one of them is still among the [`RECENT_EVENTS`] at hand.
pub const UNCOMMITTED_FACTS_MAX: usize = RECENT_EVENTS / 2;

/// Open connections of each web worker. Above this the system's own queue holds them.
pub const CONNECTIONS_PER_WORKER_MAX: usize = 1_024;

/// How long a client may take to send the head of a request, against clients that hold
/// connections open.
pub const REQUEST_HEAD_TIMEOUT: Duration = Duration::from_secs(10);

/// How long a client may take to send the body of a request.
pub const REQUEST_BODY_TIMEOUT: Duration = Duration::from_secs(10);

/// How long what comes behind a refused request is still taken off the line, and thrown away, so
/// that whoever sends it sees the answer.
pub const REFUSED_BODY_TIMEOUT: Duration = Duration::from_millis(500);

/// How long an idle connection is kept. Gateways send in bursts.
pub const KEEP_ALIVE: Duration = Duration::from_secs(75);

/// How long a stop waits for requests that have begun.
pub const STOP_TIMEOUT_SECS: u64 = 10;

/// What a gateway is told to wait when we are busy, in seconds.
pub const BUSY_RETRY_AFTER_SECS: u64 = 5;

/// What a gateway is told to wait when the store failed, in seconds. Starting again takes a while.
pub const UNHEALTHY_RETRY_AFTER_SECS: u64 = 60;

/// How far the time in a signed request may be from ours, either way. Standard Webhooks asks for
/// such a bound against replays; five minutes is what its reference libraries take.
pub const SIGNATURE_TOLERANCE_SECS: u64 = 5 * 60;

/// Signatures looked at in one request. More than one is sent while a key is changed.
pub const SIGNATURES_MAX: usize = 8;

/// How long a connection to a gateway may take to open.
pub const CONNECT_TIMEOUT: Duration = Duration::from_secs(10);

/// The longest pause that a gateway's `Retry-After` can ask of us.
pub const RETRY_AFTER_MAX: Duration = Duration::from_secs(60 * 60);

/// The pause after an answer that is about our set-up and not about the text (wrong password,
/// wrong address): a person has to mend it first.
pub const SETUP_RETRY_AFTER: Duration = Duration::from_secs(5 * 60);

/// Bytes of the configuration file. The commented example has about 5 KiB.
pub const CONFIG_BYTES_MAX: u64 = 256 * 1024;

/// Texts in and out that the engine looks through when it starts, and all that time makes it look
/// at, however many they are.
pub const RECENT_MESSAGES: usize = 50_000;

/// Facts kept at hand. More than may wait for the disk, so that each of those is here.
pub const RECENT_EVENTS: usize = 8_192;

/// A question of ours lapses after this long. Phones are off for days to save their charge.
pub const QUESTION_HOURS: i64 = 7 * 24;

/// A correction that says what is wrong reaches back this long: a week, as people speak of it.
pub const CORRECTION_HOURS: i64 = 7 * 24;

/// A bare NO is about what was read back this lately; later it may answer anything.
pub const BARE_NO_HOURS: i64 = 48;

/// A member may contest what a leader told of them this long: until the group has met again.
pub const CONTEST_DAYS: i64 = 7;

/// A member of whom nothing was told for so long, with work due, is missing on the leader's list.
pub const MISSING_DAYS: i64 = 7;

/// Money that one entry may tell, in hundredths: more than a group's fertiliser costs anywhere.
pub const CENTS_MAX: f64 = 1e12;

/// Plants that one entry may tell: those of a large nursery.
pub const PLANTS_MAX: f64 = 1e6;

/// An answer to a text is of no use after this long.
pub const ANSWER_HOURS: i64 = 24;

/// An adviser's words are of no use after this long: "plants come on Saturday" is soon over.
pub const ANNOUNCEMENT_HOURS: i64 = 72;

/// So often a day may one phone ask to send words to others: who forges its number could fill the
/// phones of a valley, and who does not has said it in fewer.
pub const ANNOUNCED_A_DAY: usize = 5;

/// The same text again within this time is impatience, not news.
pub const SAME_TEXT_HOURS: i64 = 24;

/// A text that waits for the adviser is told of again after so long, and once more with the office.
pub const WAITING_HOURS: [i64; 2] = [24, 72];

/// Texts of one phone that wait for the adviser; more are only counted.
pub const WAITING_OF_PHONE_MAX: usize = 10;

/// Readings of one text from which a person chooses: more fit no text.
pub const READINGS_MAX: usize = 3;

/// The adviser is told of the same trouble of one phone at most once within this time.
pub const TOLD_MINUTES: i64 = 60;

/// What the adviser read last within this time is what DONE closes.
pub const READ_HOURS: i64 = 24;

/// Promises of one adviser that are not kept yet: more are on no list that anybody reads.
pub const PROMISES_MAX: usize = 60;

/// Letters of an adviser's own reason to leave somebody in peace.
pub const REASON_CHARS_MAX: usize = 160;

/// Texts about codes, STOP and danger that go to a phone beyond its answers in an hour, and in a day.
pub const URGENT_AN_HOUR: usize = 20;
/// See above.
pub const URGENT_A_DAY: u32 = 60;

/// The same answer is not sent more often than this in an hour: then a person looks.
pub const SAME_ANSWER_TIMES: u32 = 2;

/// Letters from which a text says enough to be known again: "yes" and "weeded" come back by chance.
pub const MACHINE_LETTERS: usize = 12;

/// What comes within this time after a text of ours may be a machine's. Nobody types so long a text
/// in it again and again.
pub const MACHINE_SECS: i64 = 120;

/// So often in a row the same text right after ours is a machine's.
pub const MACHINE_TIMES: u32 = 3;

/// Days in a row on which a phone was answered as often as a phone is, from which somebody should
/// look whose it is.
pub const FULL_DAYS: u32 = 2;

/// The operator is told of such a phone at most once within this time.
pub const MACHINE_TOLD_DAYS: i64 = 30;

/// Texts of ours to one phone that are known when they come back.
pub const ECHOES_KNOWN: usize = 2;

/// At most one example to a phone within this time.
pub const EXAMPLE_HOURS: i64 = 24;

/// A code is good for this long.
pub const CODE_HOURS: i64 = 24;

/// So many wrong codes within [`CODE_HOURS`] lock what they were for, for as long. Of 900,000 codes
/// that leaves a guesser one chance in 300,000 a day.
pub const WRONG_CODES_MAX: usize = 3;

/// Codes that one phone is sent within [`CODE_HOURS`]: who forges its number could ask without end.
pub const CODES_SENT_MAX: usize = 20;

/// A code that opens the office's pages is good for so long: a text takes a minute or two.
pub const DOOR_CODE_MINUTES: i64 = 10;

/// Such codes that one phone is texted within [`DOOR_CODE_MINUTES`].
pub const DOOR_CODES_AT_ONCE: usize = 2;

/// Such codes that one phone is texted within [`CODE_HOURS`]: whoever knows a name can ask for them.
pub const DOOR_CODES_A_DAY: usize = 10;

/// So many wrong answers end such a code.
pub const DOOR_TRIES: u32 = 5;

/// So many wrong ones within [`CODE_HOURS`] end them all. Of 900,000 codes that leaves a guesser one
/// chance in 60,000 a day, and a code at the computer itself opens the door again.
pub const DOOR_WRONG_A_DAY: usize = 15;

/// Strangers that are answered on one day. More on one day are not people.
pub const STRANGERS_ANSWERED_A_DAY: usize = 1_000;

/// People whom a digest names; it says how many more there are.
pub const DIGEST_PEOPLE_MAX: usize = 8;

/// Stored texts of a phone whose language is kept in mind.
pub const SPOKEN_TEXTS: usize = 5;

/// So many of [`SPOKEN_TEXTS`] in one language make it the phone's. One or two may be borrowed
/// words, or another hand.
pub const SPOKEN_LEARNT: usize = 3;

/// A day by which to do a job is at least so far ahead: a text may wait three days, and the day must
/// not be past when it is read.
pub const NOTICE_DAYS: i64 = 7;

/// Facts that one answer to an adviser reads from the store: some ten milliseconds. Each block
/// gets its part of them, the latest first.
pub const FACTS_LOOKED_AT: usize = 5_000;

/// Of these, for one block: two years of a busy one.
pub const FACTS_OF_BLOCK: usize = 100;

/// The first pause before a text is tried again; it doubles with each try.
pub const RETRY_FIRST_SECS: i64 = 30;

/// The longest pause before a text is tried again.
pub const RETRY_MAX_SECS: i64 = 60 * 60;

/// A text of which parts are missing is waited for so long; networks bring the rest within seconds.
pub const PARTS_MINUTES: i64 = 10;

/// Parts that wait for others. When there are more the oldest text is taken as far as it came.
pub const PARTS_WAITING: usize = 5_000;

/// The longest pause of a gateway that takes nothing for now: so often it is tried again.
pub const GATEWAY_PAUSE_MAX_SECS: i64 = 10 * 60;

/// A gateway that could not be reached for this long is out, and new texts go by the next one.
pub const GATEWAY_OUT_MINUTES: i64 = 10;

/// Blocks read back for one text: each is a text of its own.
pub const READ_BACKS_MAX: usize = 3;

/// Items of a list that one SMS can show: 160 letters hold no more, each with ", " behind it.
pub const LIST_ITEMS_MAX: usize = 54;

/// A notice to the adviser is of no use after this long.
pub const NOTICE_HOURS: i64 = 3 * 24;

/// What the operator is told of the service is of no use after this long.
pub const SERVICE_HOURS: i64 = 12;

/// A morning line that is later than this waits for the next morning.
pub const MORNING_HOURS: i64 = 6;

/// An answer or a notice that has waited so long to leave is told to the operator.
pub const WAITS_LONG_HOURS: i64 = 3;

/// How many facts of a person's blocks are looked at to find the text before the last one.
pub const UNDO_LOOK_BACK: usize = 64;

/// Letters of a name where other names in the same text shrink first.
pub const SHORT_NAME: usize = 12;

/// Letters of a person's name, as a list takes it.
pub const PERSON_NAME: usize = 30;

/// Letters of somebody's own words beside others in a list.
pub const SHORT_WORDS: usize = 30;

/// Bytes of a file that people write: a roll of 20,000 rows has about 3 MiB.
pub const FILE_BYTES_MAX: u64 = 5 * 1024 * 1024;

/// 20,000 rows of 250 bytes: every smallholder of a large programme.
pub const ROLL_FILE_BYTES_MAX: usize = 5_000_000;
/// More is more than one adviser's office has, and would take long to look through.
pub const ROLL_ROWS_MAX: usize = 20_000;
/// Rows of a workbook, with room for its head (ECMA-376 has 1,048,576).
pub const WORKBOOK_ROWS_MAX: usize = 1_000_000;
/// Letters of who gets a parcel, and of what for.
pub const GIVEN_CHARS_MAX: usize = 200;
/// Facts since a list, up to which it can be taken back: each is looked at, in one step.
pub const UNLOAD_FACTS_MAX: u64 = 50_000;
/// Of what stays when a list is taken back so much is told.
pub const UNLOAD_SHOWN_MAX: usize = 500;
/// No cell of the roll needs more; a quotation mark left open makes cells of many lines.
pub const ROLL_CELL_CHARS_MAX: usize = 200;

/// Says what the random numbers of a start are for, so that no other use shares them.
pub const CODE_SALT: &str = "codes";

/// Bytes of one line that `budwood read --lines` takes.
pub const READ_LINE_BYTES_MAX: u64 = 1024 * 1024;

/// Memory for the store of `budwood talk`.
pub const TALK_CACHE_BYTES: u64 = 16 * 1024 * 1024;

/// Memory for the store of `budwood demo`.
pub const DEMO_CACHE_BYTES: u64 = 16 * 1024 * 1024;

/// Tries to send one text. With the pauses between them the last one is two days after the first.
pub const TRIES_MAX: u32 = 50;

/// No text waits for longer before it is asked again whether it may go.
pub const NOT_BEFORE_HOURS: i64 = 24;

/// A receipt that has not come after so long will not come; the text stays `sent` for good.
pub const RECEIPT_HOURS: i64 = 7 * 24;

/// Texts to one phone whose receipts are waited for: more than a busy adviser gets in a day.
pub const HANDED_OVER_OF_PHONE: usize = 256;

/// For so long at least it is kept in mind that a text came, so that its second delivery is known.
/// Gateways deliver again within hours, networks within days.
pub const HEARD_DAYS: i64 = 7;

/// The last texts of a phone that are kept in mind however old they are.
pub const HEARD_TEXTS_KEPT: usize = 8;

/// Texts of one phone that are kept in mind. Nobody types more in [`HEARD_DAYS`].
pub const HEARD_TEXTS_OF_PHONE: usize = 4_096;

/// Texts of all strangers together that are kept in mind: some ten MB. Of them nothing is recorded
/// that a second delivery could take back.
pub const HEARD_TEXTS_OF_STRANGERS: usize = 65_536;

/// Two gateways that deliver one text stamp it within this time.
pub const TWICE_MINUTES: i64 = 2;

/// A centre whose line broke before we answered delivers again within this time.
pub const CUT_OFF_MINUTES: i64 = 10;

/// A network that missed our acknowledgement delivers a text again within this time.
pub const TWICE_HOURS: i64 = 24;

/// A clock that is put right by less than this was right enough: clocks are set by the network.
pub const CLOCK_BACK_SECS: i64 = 60;

/// A clock that moves by more than this against the steady one was set by mistake, or was wrong
/// before.
pub const CLOCK_JUMP_SECS: i64 = 60 * 60;

/// A start so long after the last stored moment is doubted: a service is not left off over a whole
/// season, and a clock that came up wrong is as likely.
pub const CLOCK_AHEAD_DAYS: i64 = 60;

/// Texts in a row that a gateway did not take, from which a person must see to it: one or two are
/// a bad number or a busy provider.
pub const REFUSALS_IN_A_ROW: u32 = 5;

/// A gateway by which texts came, and none for so long, is not believed to work: nudges alone are
/// answered more often.
pub const SILENT_DAYS: i64 = 7;

/// No line is called silent sooner: a night passes without a text.
pub const SILENT_HOURS_MIN: i64 = 12;

/// Ids of messages left out after a restore. Those given out after the backup was taken must not
/// be given again: a late receipt for one of them would settle another text.
pub const RESTORE_GAP: u64 = 1_000_000;

/// Records of a copy that the engine reads between two commits: a few milliseconds of its time.
pub const COPY_RECORDS: usize = 1_000;

/// Records that are looked through between two commits while somebody is taken out of the store. Each
/// of them may be written again, and sled stands still when very much is written at once.
pub const ERASE_RECORDS: usize = 200;

/// Records kept as they were while a copy is taken; it is given up when they become more, before
/// memory runs out.
pub const COPY_KEPT_MAX: usize = 500_000;

/// Records in one commit when a store is filled.
pub const FILL_RECORDS: usize = 1_000;

/// Bytes of one line of a log. The longest record is the state of a block with all its facts.
pub const LOG_LINE_BYTES_MAX: u64 = 16 * 1024 * 1024;

/// Bytes of a backup's manifest: it has under one KiB.
pub const MANIFEST_BYTES_MAX: u64 = 64 * 1024;

/// Bytes of a request to the control socket: a list of people in Base64, and what stands around it.
pub const CONTROL_REQUEST_BYTES_MAX: u64 = FILE_BYTES_MAX / 3 * 4 + 4 * 1024;

/// Wishes to read the configuration again that wait for the one before.
pub const RELOADS_WAITING_MAX: usize = 4;

/// Bytes of an answer of the control socket: one part of a copy.
pub const CONTROL_ANSWER_BYTES_MAX: u64 = 256 * 1024 * 1024;

/// How long either end of the control socket waits for the other.
pub const CONTROL_TIMEOUT: Duration = Duration::from_secs(60);

/// How often a store that is in use is tried again before that is said.
pub const STORE_LOCK_TRIES: u32 = 20;

/// The pause between these tries: together half a second.
pub const STORE_LOCK_PAUSE: Duration = Duration::from_millis(25);

/// A store's log up to this size is copied whole before it is opened, a larger one as far as opening
/// may write over what counts: a fraction of a second, and what hundreds of farmers text in a year.
pub const LOG_COPIED_WHOLE_BYTES: u64 = 64 * 1024 * 1024;

/// Stands of a group whose girths are looked at for what is usual there: more do not change it.
pub const PEERS_MAX: usize = 500;

/// Somebody who looks at pages shows again who they are after so long: a working day.
pub const SESSION_HOURS: i64 = 12;

/// Browsers in which one person is in at once; with one more the oldest is shown out.
pub const SESSIONS_OF_PERSON: usize = 5;

/// Names and codes at the door of the office's pages in a minute, of everybody together. More than
/// that are not people.
pub const DOOR_A_MINUTE: u32 = 60;

/// Bytes of a form: a reason, a name and a code.
pub const FORM_BYTES_MAX: usize = 8 * 1024;

/// Weeks of a group's season that a page shows: a planting season.
pub const SEASON_WEEKS: usize = 26;

/// Facts that the page of a season reads: a season of 1,500 farmers, in some fifty milliseconds.
pub const SEASON_FACTS: usize = 30_000;

/// Days ahead for which a page lists the texts to come.
pub const AHEAD_DAYS: i64 = 14;

/// Rows of a table that has no end of its own.
pub const PAGE_ROWS: usize = 200;

/// Other groups that are asked by which law stands grow, and stands of each: more do not change it.
pub const PLACES_MAX: usize = 8;
/// See [`PLACES_MAX`].
pub const STANDS_A_PLACE_MAX: usize = 24;

/// A stand further behind than this, in months, is the adviser's to look at.
pub const BEHIND_MONTHS: i32 = 12;
