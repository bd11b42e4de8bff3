# Print an optspec for argparse to handle cmd's options that are independent of any subcommand.
function __fish_budwood_global_optspecs
    string join \n h/help V/version
end

function __fish_budwood_needs_command
    # Figure out if the current invocation already has a command.
    set -l cmd (commandline -opc)
    set -e cmd[1]
    argparse -s (__fish_budwood_global_optspecs) -- $cmd 2>/dev/null
    or return
    if set -q argv[1]
        # Also print the command, so this can be used to figure out what it is.
        echo $argv[1]
        return 1
    end
    return 0
end

function __fish_budwood_using_subcommand
    set -l cmd (__fish_budwood_needs_command)
    test -z "$cmd"
    and return 1
    contains -- $cmd[1] $argv
end

complete -c budwood -n "__fish_budwood_needs_command" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_needs_command" -s V -l version -d 'Print version'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "demo" -d 'Plays three years of an invented group in a few seconds, and shows the conversation'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "serve" -d 'Runs the service: texts in by HTTP, texts out through the gateway'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "setup" -d 'Makes a configuration, its secrets and the begin of a list of people, from six answers'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "talk" -d 'Opens a phone in the terminal: text as any registered person, see the answers, move time'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "read" -d 'Shows what would be made of a text, without storing anything'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "roll" -d 'Checks or loads a list of people, phones, groups, blocks and consent (CSV), or prints its columns'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "sheet" -d 'Prints a sheet: for meetings, visits and the office. The service may run'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "export" -d 'Writes files for a partner into a new folder, and writes down who got what. The service may run'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "outline" -d 'Takes in the outline of a block, as a walk with a positioning device gives it. The service may run'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "backup" -d 'Copies everything into a new folder, as it is at this moment. The service may run'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "restore" -d 'Fills an empty store from a backup. The service must not be running'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "release" -d 'Lets texts leave again after a restore or an import. The service may run'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "reload" -d 'Has the running service read its configuration again: hours of nudges, routes, language packs, calendars, the log\'s filter. The rest needs a new start, and is named'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "health" -d 'Asks the running service how it is. Fails when something is wrong or nobody answers, for a monitor or a container'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "office" -d 'Helps people to the office\'s pages'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "gateway" -d 'Tries a gateway of a configuration'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "log" -d 'Writes all records as JSON lines, or fills an empty store from them'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "due" -d 'Lists the jobs that are due on a day, block by block, or plans a planting. Changes nothing'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "rehearse" -d 'Plays years of a list of people: texts, costs, busy weeks, clashes of labour, openings. Nothing is kept or sent'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "check" -d 'Checks a configuration with its language packs and calendars, or one calendar'
complete -c budwood -n "__fish_budwood_needs_command" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand demo" -l all -d 'Show every text, not only the scenes'
complete -c budwood -n "__fish_budwood_using_subcommand demo" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand serve" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand setup" -l country -d 'The country of numbers without a country code: two letters, such as GB' -r
complete -c budwood -n "__fish_budwood_using_subcommand setup" -l zone -d 'The time zone, such as Asia/Jakarta' -r
complete -c budwood -n "__fish_budwood_using_subcommand setup" -l number -d 'The number or short code that people text to' -r
complete -c budwood -n "__fish_budwood_using_subcommand setup" -l gateway -d 'What carries the texts' -r -f -a "modem\t'A modem with a SIM on this computer'
smpp\t'An account at a message centre, by SMPP'
oneapi\t'A provider that speaks GSMA OneAPI'
kannel\t'Kannel on this computer'"
complete -c budwood -n "__fish_budwood_using_subcommand setup" -l adviser -d 'The adviser\'s name' -r
complete -c budwood -n "__fish_budwood_using_subcommand setup" -l phone -d 'The adviser\'s phone, which is also told each morning how the service is' -r
complete -c budwood -n "__fish_budwood_using_subcommand setup" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c budwood -n "__fish_budwood_using_subcommand talk" -l roll -d 'The list of people and blocks; without it the demo\'s list' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand talk" -l store -d 'Keep the record in this folder; without it nothing is kept' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand talk" -l from -d 'The day on which it begins, such as 2026-12-01; without it today' -r
complete -c budwood -n "__fish_budwood_using_subcommand talk" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand read" -l received -d 'When the texts arrived, such as 2026-03-18T12:00; without it now' -r
complete -c budwood -n "__fish_budwood_using_subcommand read" -l lines -d 'Read JSON lines from standard input and answer each with a JSON line'
complete -c budwood -n "__fish_budwood_using_subcommand read" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and not __fish_seen_subcommand_from check load undo take columns help" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and not __fish_seen_subcommand_from check load undo take columns help" -f -a "check" -d 'Lists every doubtful row with its line and reason. Stores nothing. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and not __fish_seen_subcommand_from check load undo take columns help" -f -a "load" -d 'Takes the list in, all of it or nothing. Can be repeated. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and not __fish_seen_subcommand_from check load undo take columns help" -f -a "undo" -d 'Shows what taking the last list back would do, and with --yes takes it back: people, phones and blocks are as they were, and facts are taken back by new ones. What others have built on since stays, and is named. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and not __fish_seen_subcommand_from check load undo take columns help" -f -a "take" -d 'Makes a list that can be loaded of one as an office keeps it: CSV of any encoding or a workbook, any heads. Asks what it cannot know. With a configuration what is good is stored'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and not __fish_seen_subcommand_from check load undo take columns help" -f -a "columns" -d 'Prints the columns of a list: what is in each, which rows need it, and an example'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and not __fish_seen_subcommand_from check load undo take columns help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from check" -l config -d 'The configuration whose store the list is compared with; without it an empty store' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from check" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from load" -l config -d 'The configuration whose store it goes into' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from load" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from undo" -l yes -d 'Take it back'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from undo" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l config -d 'The configuration whose store it goes into; without it nothing is stored' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l unit -d 'The unit of areas that have none: ha, acre, rai or m2' -r
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l days -d 'Which part of a day like 5/6/2026 comes first' -r -f -a "day-first\t'5 June'
month-first\t'6 May'"
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l country -d 'The country of numbers without a plus, two letters; without it the configuration\'s' -r
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l group -d 'The group of rows that name none' -r
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l zone -d 'The zone of new groups, such as Asia/Jakarta; needs --calendar' -r
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l calendar -d 'The calendar of new groups, such as fao' -r
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l consent-on -d 'The day on which everybody who is marked as agreed did so' -r
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -l good-rows -d 'Load the rows in which nothing is open, and give the rest back'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from take" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from columns" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from help" -f -a "check" -d 'Lists every doubtful row with its line and reason. Stores nothing. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from help" -f -a "load" -d 'Takes the list in, all of it or nothing. Can be repeated. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from help" -f -a "undo" -d 'Shows what taking the last list back would do, and with --yes takes it back: people, phones and blocks are as they were, and facts are taken back by new ones. What others have built on since stays, and is named. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from help" -f -a "take" -d 'Makes a list that can be loaded of one as an office keeps it: CSV of any encoding or a workbook, any heads. Asks what it cannot know. With a configuration what is good is stored'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from help" -f -a "columns" -d 'Prints the columns of a list: what is in each, which rows need it, and an example'
complete -c budwood -n "__fish_budwood_using_subcommand roll; and __fish_seen_subcommand_from help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand sheet" -l form -d 'In which form' -r -f -a "terminal\t'Columns side by side'
csv\t'For other programs, in UTF-8'
xlsx\t'For a spreadsheet program'
page\t'For a browser, and to be printed from there'
pdf\t'To be printed as it is'"
complete -c budwood -n "__fish_budwood_using_subcommand sheet" -l language -d 'In which language, by code; without it the adviser\'s' -r
complete -c budwood -n "__fish_budwood_using_subcommand sheet" -l to -d 'The new file; without it to standard output' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand sheet" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c budwood -n "__fish_budwood_using_subcommand export" -l what -d 'What: plots (names and places of those who agreed), programme (facts and figures without names), calendar (days to come of groups)' -r -f -a "plots\t''
programme\t''
calendar\t''"
complete -c budwood -n "__fish_budwood_using_subcommand export" -l for -d 'To whom it goes' -r
complete -c budwood -n "__fish_budwood_using_subcommand export" -l purpose -d 'What they want it for' -r
complete -c budwood -n "__fish_budwood_using_subcommand export" -l given -d 'Print who got what so far, and write nothing'
complete -c budwood -n "__fish_budwood_using_subcommand export" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand outline" -l how -d 'How it was taken' -r -f -a "walked\t''
surveyed\t''
drawn\t''"
complete -c budwood -n "__fish_budwood_using_subcommand outline" -l on -d 'On which day, such as 2026-11-25' -r
complete -c budwood -n "__fish_budwood_using_subcommand outline" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand backup" -l keep -d 'Make the new folder inside this one, named by the moment, and keep only so many of them: the newest' -r
complete -c budwood -n "__fish_budwood_using_subcommand backup" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand restore" -l try -d 'Only read and check the backup. Needs no empty store and changes nothing'
complete -c budwood -n "__fish_budwood_using_subcommand restore" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c budwood -n "__fish_budwood_using_subcommand release" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c budwood -n "__fish_budwood_using_subcommand reload" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand health" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand office; and not __fish_seen_subcommand_from code help" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand office; and not __fish_seen_subcommand_from code help" -f -a "code" -d 'Prints a code with which somebody comes in, where no text can reach their phone. The service must be running, and only who owns its store can ask'
complete -c budwood -n "__fish_budwood_using_subcommand office; and not __fish_seen_subcommand_from code help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand office; and __fish_seen_subcommand_from code" -l for -d 'The whole name, as it is on the list' -r
complete -c budwood -n "__fish_budwood_using_subcommand office; and __fish_seen_subcommand_from code" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand office; and __fish_seen_subcommand_from help" -f -a "code" -d 'Prints a code with which somebody comes in, where no text can reach their phone. The service must be running, and only who owns its store can ask'
complete -c budwood -n "__fish_budwood_using_subcommand office; and __fish_seen_subcommand_from help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand gateway; and not __fish_seen_subcommand_from try help" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand gateway; and not __fish_seen_subcommand_from try help" -f -a "try" -d 'Shows what a saved request of a provider becomes. Stores nothing'
complete -c budwood -n "__fish_budwood_using_subcommand gateway; and not __fish_seen_subcommand_from try help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand gateway; and __fish_seen_subcommand_from try" -l inbound -d 'The request as it came: its first line, headers, an empty line, the body; or the body alone' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand gateway; and __fish_seen_subcommand_from try" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand gateway; and __fish_seen_subcommand_from help" -f -a "try" -d 'Shows what a saved request of a provider becomes. Stores nothing'
complete -c budwood -n "__fish_budwood_using_subcommand gateway; and __fish_seen_subcommand_from help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand log; and not __fish_seen_subcommand_from export import help" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand log; and not __fish_seen_subcommand_from export import help" -f -a "export" -d 'Writes every record as one JSON line, as it is at this moment. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand log; and not __fish_seen_subcommand_from export import help" -f -a "import" -d 'Fills an empty store from an exported log. The service must not be running. Afterwards no text is sent until `budwood release`'
complete -c budwood -n "__fish_budwood_using_subcommand log; and not __fish_seen_subcommand_from export import help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand log; and __fish_seen_subcommand_from export" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand log; and __fish_seen_subcommand_from import" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand log; and __fish_seen_subcommand_from help" -f -a "export" -d 'Writes every record as one JSON line, as it is at this moment. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand log; and __fish_seen_subcommand_from help" -f -a "import" -d 'Fills an empty store from an exported log. The service must not be running. Afterwards no text is sent until `budwood release`'
complete -c budwood -n "__fish_budwood_using_subcommand log; and __fish_seen_subcommand_from help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand due" -l on -d 'The day, such as 2026-12-10; without it today where groups without a zone live' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l calendar -d 'The calendar: one that ships, or a file' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l planting -d 'The day on which planting begins' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l area -d 'The area, such as "1.2 ha", "3 acre" or "7.5 rai"' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l outline -d 'The outline: a file of "latitude longitude" lines, or a polygon of RFC 7946' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand due" -l rectangle -d 'A rectangle with rows along its length, such as 100x80 (length and width in metres)' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l spacing -d 'Distances, such as 7x3; without them the calendar\'s' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l slope-pct -d 'Slope in per cent' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l bearing -d 'Direction of the rows in degrees from north, for an outline' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l margin-m -d 'Distance of the first trees from the boundary of an outline or rectangle; without it the calendar\'s' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l bundle -d 'Plants in a tray or bundle' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l rains -d 'Usual rains, such as 05-20/10-31; two with a comma where it rains twice a year' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l material -d 'What is planted: polybag, budded stump, stump or seedling; without it what the calendar calls usual' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l instead -d 'Another fertiliser, such as 15-15-15: how much of it brings the same nitrogen each round' -r
complete -c budwood -n "__fish_budwood_using_subcommand due" -l costs -d 'Costs, grants and labour, as demo-data/costs.toml has them' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand due" -l plan -d 'Plan a planting instead: points, plants, days, the list of seven years, texts, money'
complete -c budwood -n "__fish_budwood_using_subcommand due" -l taped -d 'The area was measured along the ground, with a tape'
complete -c budwood -n "__fish_budwood_using_subcommand due" -l along-ground -d 'Distances between trees are measured along the ground, not held level'
complete -c budwood -n "__fish_budwood_using_subcommand due" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l calendar -d 'A calendar for all groups, one that ships or a file; without it each group\'s own' -r
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l config -d 'The configuration of a service: its calendars, language packs, times of day and country' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l country -d 'The country of numbers that begin without a plus, such as ID; without it that of the configuration' -r
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l from -d 'The day on which it begins; without it the first planting day of the list' -r
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l years -d 'How many years' -r
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l price -d 'The price of one segment, in any money' -r
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l diligent-pct -d 'Farmers who answer soon, of a hundred; half of the others answer late, half hardly ever' -r
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l costs -d 'Costs and labour, as demo-data/costs.toml has them: tells who has more work than days' -r -F
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -l rains-late -d 'How many days later the rains begin and end in the second play' -r
complete -c budwood -n "__fish_budwood_using_subcommand rehearse" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand check; and not __fish_seen_subcommand_from calendar help" -l records -d 'Also read every record of its store. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand check; and not __fish_seen_subcommand_from calendar help" -l try -d 'Also try what it names on this computer: the port, the secrets, the store and its disk'
complete -c budwood -n "__fish_budwood_using_subcommand check; and not __fish_seen_subcommand_from calendar help" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand check; and not __fish_seen_subcommand_from calendar help" -a "calendar" -d 'Says everything that is wrong in a calendar, with the line, or how sure its values are'
complete -c budwood -n "__fish_budwood_using_subcommand check; and not __fish_seen_subcommand_from calendar help" -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand check; and __fish_seen_subcommand_from calendar" -s h -l help -d 'Print help'
complete -c budwood -n "__fish_budwood_using_subcommand check; and __fish_seen_subcommand_from help" -f -a "calendar" -d 'Says everything that is wrong in a calendar, with the line, or how sure its values are'
complete -c budwood -n "__fish_budwood_using_subcommand check; and __fish_seen_subcommand_from help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "demo" -d 'Plays three years of an invented group in a few seconds, and shows the conversation'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "serve" -d 'Runs the service: texts in by HTTP, texts out through the gateway'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "setup" -d 'Makes a configuration, its secrets and the begin of a list of people, from six answers'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "talk" -d 'Opens a phone in the terminal: text as any registered person, see the answers, move time'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "read" -d 'Shows what would be made of a text, without storing anything'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "roll" -d 'Checks or loads a list of people, phones, groups, blocks and consent (CSV), or prints its columns'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "sheet" -d 'Prints a sheet: for meetings, visits and the office. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "export" -d 'Writes files for a partner into a new folder, and writes down who got what. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "outline" -d 'Takes in the outline of a block, as a walk with a positioning device gives it. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "backup" -d 'Copies everything into a new folder, as it is at this moment. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "restore" -d 'Fills an empty store from a backup. The service must not be running'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "release" -d 'Lets texts leave again after a restore or an import. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "reload" -d 'Has the running service read its configuration again: hours of nudges, routes, language packs, calendars, the log\'s filter. The rest needs a new start, and is named'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "health" -d 'Asks the running service how it is. Fails when something is wrong or nobody answers, for a monitor or a container'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "office" -d 'Helps people to the office\'s pages'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "gateway" -d 'Tries a gateway of a configuration'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "log" -d 'Writes all records as JSON lines, or fills an empty store from them'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "due" -d 'Lists the jobs that are due on a day, block by block, or plans a planting. Changes nothing'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "rehearse" -d 'Plays years of a list of people: texts, costs, busy weeks, clashes of labour, openings. Nothing is kept or sent'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "check" -d 'Checks a configuration with its language packs and calendars, or one calendar'
complete -c budwood -n "__fish_budwood_using_subcommand help; and not __fish_seen_subcommand_from demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from roll" -f -a "check" -d 'Lists every doubtful row with its line and reason. Stores nothing. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from roll" -f -a "load" -d 'Takes the list in, all of it or nothing. Can be repeated. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from roll" -f -a "undo" -d 'Shows what taking the last list back would do, and with --yes takes it back: people, phones and blocks are as they were, and facts are taken back by new ones. What others have built on since stays, and is named. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from roll" -f -a "take" -d 'Makes a list that can be loaded of one as an office keeps it: CSV of any encoding or a workbook, any heads. Asks what it cannot know. With a configuration what is good is stored'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from roll" -f -a "columns" -d 'Prints the columns of a list: what is in each, which rows need it, and an example'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from office" -f -a "code" -d 'Prints a code with which somebody comes in, where no text can reach their phone. The service must be running, and only who owns its store can ask'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from gateway" -f -a "try" -d 'Shows what a saved request of a provider becomes. Stores nothing'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from log" -f -a "export" -d 'Writes every record as one JSON line, as it is at this moment. The service may run'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from log" -f -a "import" -d 'Fills an empty store from an exported log. The service must not be running. Afterwards no text is sent until `budwood release`'
complete -c budwood -n "__fish_budwood_using_subcommand help; and __fish_seen_subcommand_from check" -f -a "calendar" -d 'Says everything that is wrong in a calendar, with the line, or how sure its values are'
