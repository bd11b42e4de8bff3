_budwood() {
    local i cur prev opts cmd
    COMPREPLY=()
    if [[ "${BASH_VERSINFO[0]}" -ge 4 ]]; then
        cur="$2"
    else
        cur="${COMP_WORDS[COMP_CWORD]}"
    fi
    prev="$3"
    cmd=""
    opts=""

    for i in "${COMP_WORDS[@]:0:COMP_CWORD}"
    do
        case "${cmd},${i}" in
            ",$1")
                cmd="budwood"
                ;;
            budwood,backup)
                cmd="budwood__subcmd__backup"
                ;;
            budwood,check)
                cmd="budwood__subcmd__check"
                ;;
            budwood,demo)
                cmd="budwood__subcmd__demo"
                ;;
            budwood,due)
                cmd="budwood__subcmd__due"
                ;;
            budwood,export)
                cmd="budwood__subcmd__export"
                ;;
            budwood,gateway)
                cmd="budwood__subcmd__gateway"
                ;;
            budwood,health)
                cmd="budwood__subcmd__health"
                ;;
            budwood,help)
                cmd="budwood__subcmd__help"
                ;;
            budwood,log)
                cmd="budwood__subcmd__log"
                ;;
            budwood,office)
                cmd="budwood__subcmd__office"
                ;;
            budwood,outline)
                cmd="budwood__subcmd__outline"
                ;;
            budwood,read)
                cmd="budwood__subcmd__read"
                ;;
            budwood,rehearse)
                cmd="budwood__subcmd__rehearse"
                ;;
            budwood,release)
                cmd="budwood__subcmd__release"
                ;;
            budwood,reload)
                cmd="budwood__subcmd__reload"
                ;;
            budwood,restore)
                cmd="budwood__subcmd__restore"
                ;;
            budwood,roll)
                cmd="budwood__subcmd__roll"
                ;;
            budwood,serve)
                cmd="budwood__subcmd__serve"
                ;;
            budwood,setup)
                cmd="budwood__subcmd__setup"
                ;;
            budwood,sheet)
                cmd="budwood__subcmd__sheet"
                ;;
            budwood,talk)
                cmd="budwood__subcmd__talk"
                ;;
            budwood__subcmd__check,calendar)
                cmd="budwood__subcmd__check__subcmd__calendar"
                ;;
            budwood__subcmd__check,help)
                cmd="budwood__subcmd__check__subcmd__help"
                ;;
            budwood__subcmd__check__subcmd__help,calendar)
                cmd="budwood__subcmd__check__subcmd__help__subcmd__calendar"
                ;;
            budwood__subcmd__check__subcmd__help,help)
                cmd="budwood__subcmd__check__subcmd__help__subcmd__help"
                ;;
            budwood__subcmd__gateway,help)
                cmd="budwood__subcmd__gateway__subcmd__help"
                ;;
            budwood__subcmd__gateway,try)
                cmd="budwood__subcmd__gateway__subcmd__try"
                ;;
            budwood__subcmd__gateway__subcmd__help,help)
                cmd="budwood__subcmd__gateway__subcmd__help__subcmd__help"
                ;;
            budwood__subcmd__gateway__subcmd__help,try)
                cmd="budwood__subcmd__gateway__subcmd__help__subcmd__try"
                ;;
            budwood__subcmd__help,backup)
                cmd="budwood__subcmd__help__subcmd__backup"
                ;;
            budwood__subcmd__help,check)
                cmd="budwood__subcmd__help__subcmd__check"
                ;;
            budwood__subcmd__help,demo)
                cmd="budwood__subcmd__help__subcmd__demo"
                ;;
            budwood__subcmd__help,due)
                cmd="budwood__subcmd__help__subcmd__due"
                ;;
            budwood__subcmd__help,export)
                cmd="budwood__subcmd__help__subcmd__export"
                ;;
            budwood__subcmd__help,gateway)
                cmd="budwood__subcmd__help__subcmd__gateway"
                ;;
            budwood__subcmd__help,health)
                cmd="budwood__subcmd__help__subcmd__health"
                ;;
            budwood__subcmd__help,help)
                cmd="budwood__subcmd__help__subcmd__help"
                ;;
            budwood__subcmd__help,log)
                cmd="budwood__subcmd__help__subcmd__log"
                ;;
            budwood__subcmd__help,office)
                cmd="budwood__subcmd__help__subcmd__office"
                ;;
            budwood__subcmd__help,outline)
                cmd="budwood__subcmd__help__subcmd__outline"
                ;;
            budwood__subcmd__help,read)
                cmd="budwood__subcmd__help__subcmd__read"
                ;;
            budwood__subcmd__help,rehearse)
                cmd="budwood__subcmd__help__subcmd__rehearse"
                ;;
            budwood__subcmd__help,release)
                cmd="budwood__subcmd__help__subcmd__release"
                ;;
            budwood__subcmd__help,reload)
                cmd="budwood__subcmd__help__subcmd__reload"
                ;;
            budwood__subcmd__help,restore)
                cmd="budwood__subcmd__help__subcmd__restore"
                ;;
            budwood__subcmd__help,roll)
                cmd="budwood__subcmd__help__subcmd__roll"
                ;;
            budwood__subcmd__help,serve)
                cmd="budwood__subcmd__help__subcmd__serve"
                ;;
            budwood__subcmd__help,setup)
                cmd="budwood__subcmd__help__subcmd__setup"
                ;;
            budwood__subcmd__help,sheet)
                cmd="budwood__subcmd__help__subcmd__sheet"
                ;;
            budwood__subcmd__help,talk)
                cmd="budwood__subcmd__help__subcmd__talk"
                ;;
            budwood__subcmd__help__subcmd__check,calendar)
                cmd="budwood__subcmd__help__subcmd__check__subcmd__calendar"
                ;;
            budwood__subcmd__help__subcmd__gateway,try)
                cmd="budwood__subcmd__help__subcmd__gateway__subcmd__try"
                ;;
            budwood__subcmd__help__subcmd__log,export)
                cmd="budwood__subcmd__help__subcmd__log__subcmd__export"
                ;;
            budwood__subcmd__help__subcmd__log,import)
                cmd="budwood__subcmd__help__subcmd__log__subcmd__import"
                ;;
            budwood__subcmd__help__subcmd__office,code)
                cmd="budwood__subcmd__help__subcmd__office__subcmd__code"
                ;;
            budwood__subcmd__help__subcmd__roll,check)
                cmd="budwood__subcmd__help__subcmd__roll__subcmd__check"
                ;;
            budwood__subcmd__help__subcmd__roll,columns)
                cmd="budwood__subcmd__help__subcmd__roll__subcmd__columns"
                ;;
            budwood__subcmd__help__subcmd__roll,load)
                cmd="budwood__subcmd__help__subcmd__roll__subcmd__load"
                ;;
            budwood__subcmd__help__subcmd__roll,take)
                cmd="budwood__subcmd__help__subcmd__roll__subcmd__take"
                ;;
            budwood__subcmd__help__subcmd__roll,undo)
                cmd="budwood__subcmd__help__subcmd__roll__subcmd__undo"
                ;;
            budwood__subcmd__log,export)
                cmd="budwood__subcmd__log__subcmd__export"
                ;;
            budwood__subcmd__log,help)
                cmd="budwood__subcmd__log__subcmd__help"
                ;;
            budwood__subcmd__log,import)
                cmd="budwood__subcmd__log__subcmd__import"
                ;;
            budwood__subcmd__log__subcmd__help,export)
                cmd="budwood__subcmd__log__subcmd__help__subcmd__export"
                ;;
            budwood__subcmd__log__subcmd__help,help)
                cmd="budwood__subcmd__log__subcmd__help__subcmd__help"
                ;;
            budwood__subcmd__log__subcmd__help,import)
                cmd="budwood__subcmd__log__subcmd__help__subcmd__import"
                ;;
            budwood__subcmd__office,code)
                cmd="budwood__subcmd__office__subcmd__code"
                ;;
            budwood__subcmd__office,help)
                cmd="budwood__subcmd__office__subcmd__help"
                ;;
            budwood__subcmd__office__subcmd__help,code)
                cmd="budwood__subcmd__office__subcmd__help__subcmd__code"
                ;;
            budwood__subcmd__office__subcmd__help,help)
                cmd="budwood__subcmd__office__subcmd__help__subcmd__help"
                ;;
            budwood__subcmd__roll,check)
                cmd="budwood__subcmd__roll__subcmd__check"
                ;;
            budwood__subcmd__roll,columns)
                cmd="budwood__subcmd__roll__subcmd__columns"
                ;;
            budwood__subcmd__roll,help)
                cmd="budwood__subcmd__roll__subcmd__help"
                ;;
            budwood__subcmd__roll,load)
                cmd="budwood__subcmd__roll__subcmd__load"
                ;;
            budwood__subcmd__roll,take)
                cmd="budwood__subcmd__roll__subcmd__take"
                ;;
            budwood__subcmd__roll,undo)
                cmd="budwood__subcmd__roll__subcmd__undo"
                ;;
            budwood__subcmd__roll__subcmd__help,check)
                cmd="budwood__subcmd__roll__subcmd__help__subcmd__check"
                ;;
            budwood__subcmd__roll__subcmd__help,columns)
                cmd="budwood__subcmd__roll__subcmd__help__subcmd__columns"
                ;;
            budwood__subcmd__roll__subcmd__help,help)
                cmd="budwood__subcmd__roll__subcmd__help__subcmd__help"
                ;;
            budwood__subcmd__roll__subcmd__help,load)
                cmd="budwood__subcmd__roll__subcmd__help__subcmd__load"
                ;;
            budwood__subcmd__roll__subcmd__help,take)
                cmd="budwood__subcmd__roll__subcmd__help__subcmd__take"
                ;;
            budwood__subcmd__roll__subcmd__help,undo)
                cmd="budwood__subcmd__roll__subcmd__help__subcmd__undo"
                ;;
            *)
                ;;
        esac
    done

    case "${cmd}" in
        budwood)
            opts="-h -V --help --version demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 1 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__backup)
            opts="-h --keep --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --keep)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__check)
            opts="-h --records --try --help calendar help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__check__subcmd__calendar)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__check__subcmd__help)
            opts="calendar help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__check__subcmd__help__subcmd__calendar)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__check__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__demo)
            opts="-h --all --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__due)
            opts="-h --on --plan --calendar --planting --area --outline --rectangle --spacing --slope-pct --taped --along-ground --bearing --margin-m --bundle --rains --material --instead --costs --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --calendar)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --planting)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --area)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --outline)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --rectangle)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --spacing)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --slope-pct)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --bearing)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --margin-m)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --bundle)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --rains)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --material)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --instead)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --costs)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__export)
            opts="-h --what --for --purpose --given --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --what)
                    COMPREPLY=($(compgen -W "plots programme calendar" -- "${cur}"))
                    return 0
                    ;;
                --for)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --purpose)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__gateway)
            opts="-h --help try help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__gateway__subcmd__help)
            opts="try help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__gateway__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__gateway__subcmd__help__subcmd__try)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__gateway__subcmd__try)
            opts="-h --inbound --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --inbound)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__health)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help)
            opts="demo serve setup talk read roll sheet export outline backup restore release reload health office gateway log due rehearse check help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__backup)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__check)
            opts="calendar"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__check__subcmd__calendar)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__demo)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__due)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__export)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__gateway)
            opts="try"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__gateway__subcmd__try)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__health)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__log)
            opts="export import"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__log__subcmd__export)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__log__subcmd__import)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__office)
            opts="code"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__office__subcmd__code)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__outline)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__read)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__rehearse)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__release)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__reload)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__restore)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__roll)
            opts="check load undo take columns"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__roll__subcmd__check)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__roll__subcmd__columns)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__roll__subcmd__load)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__roll__subcmd__take)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__roll__subcmd__undo)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__serve)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__setup)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__sheet)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__help__subcmd__talk)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__log)
            opts="-h --help export import help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__log__subcmd__export)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__log__subcmd__help)
            opts="export import help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__log__subcmd__help__subcmd__export)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__log__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__log__subcmd__help__subcmd__import)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__log__subcmd__import)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__office)
            opts="-h --help code help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__office__subcmd__code)
            opts="-h --for --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --for)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__office__subcmd__help)
            opts="code help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__office__subcmd__help__subcmd__code)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__office__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__outline)
            opts="-h --how --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --how)
                    COMPREPLY=($(compgen -W "walked surveyed drawn" -- "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__read)
            opts="-h --lines --received --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --received)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__rehearse)
            opts="-h --calendar --config --country --from --years --price --diligent-pct --costs --rains-late --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --calendar)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --config)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --country)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --from)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --years)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --price)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --diligent-pct)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --costs)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --rains-late)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__release)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__reload)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__restore)
            opts="-h --try --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll)
            opts="-h --help check load undo take columns help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__check)
            opts="-h --config --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --config)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__columns)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__help)
            opts="check load undo take columns help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__help__subcmd__check)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__help__subcmd__columns)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__help__subcmd__load)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__help__subcmd__take)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__help__subcmd__undo)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__load)
            opts="-h --config --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --config)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__take)
            opts="-h --config --unit --days --country --group --zone --calendar --consent-on --good-rows --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --config)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --unit)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --days)
                    COMPREPLY=($(compgen -W "day-first month-first" -- "${cur}"))
                    return 0
                    ;;
                --country)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --group)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --zone)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --calendar)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --consent-on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__roll__subcmd__undo)
            opts="-h --yes --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__serve)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__setup)
            opts="-h --country --zone --number --gateway --adviser --phone --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --country)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --zone)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --number)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --gateway)
                    COMPREPLY=($(compgen -W "modem smpp oneapi kannel" -- "${cur}"))
                    return 0
                    ;;
                --adviser)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --phone)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__sheet)
            opts="-h --form --language --to --help meeting shares pickup visits holds census cards season handover"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --form)
                    COMPREPLY=($(compgen -W "terminal csv xlsx page pdf" -- "${cur}"))
                    return 0
                    ;;
                --language)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --to)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        budwood__subcmd__talk)
            opts="-h --roll --store --from --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --roll)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --store)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --from)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
    esac
}

if [[ "${BASH_VERSINFO[0]}" -eq 4 && "${BASH_VERSINFO[1]}" -ge 4 || "${BASH_VERSINFO[0]}" -gt 4 ]]; then
    complete -F _budwood -o nosort -o bashdefault -o default budwood
else
    complete -F _budwood -o bashdefault -o default budwood
fi
