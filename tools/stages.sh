# Running named stages one after another: progress, counting, and the closing table. Sourced by ./test.
# shellcheck shell=bash

LOGS=$CARGO_TARGET_DIR/test-logs
SECONDS_BETWEEN_SIGNS=20
passed_in_all=0
failed_in_all=0
table=()
failed_stages=()
not_run=()

clock() { printf '%d:%02d' $(($1 / 60)) $(($1 % 60)); }

# Runs stage_NAME with its output in a log, shows how far it is, counts what it tested.
run_stage() {
    local name=$1 log=$LOGS/$1.log began=$SECONDS status=0
    start_group "$log" "stage_$name"
    watch_over "$name" "$log" "$STARTED" "$began"
    wait "$STARTED" || status=$?
    record "$name" "$log" "$status" $((SECONDS - began))
}

# Starts a function in the background as a group of its own, so that all it started can be ended with it.
start_group() {
    local log=$1
    shift
    set -m
    "$@" >"$log" 2>&1 </dev/null &
    STARTED=$!
    set +m
    groups+=("$STARTED")
}

groups=()
end_groups() {
    local group
    for group in ${groups[@]+"${groups[@]}"}; do
        kill -- "-$group" 2>/dev/null
    done
}
trap end_groups EXIT
trap 'exit 130' INT TERM

# On a terminal the last line of the log, rewritten in place; elsewhere a sign of life now and then.
watch_over() {
    local name=$1 log=$2 process=$3 began=$4 next=$SECONDS_BETWEEN_SIGNS last
    if ! [ -t 1 ]; then
        say "· $name"
    fi
    while kill -0 "$process" 2>/dev/null; do
        last=$(tail -n 1 "$log" 2>/dev/null | tr -d '\r' | cut -c1-90)
        if [ -t 1 ]; then
            printf '\r\033[K· %-11s %6s  %s' "$name" "$(clock $((SECONDS - began)))" "$last"
        elif [ $((SECONDS - began)) -ge "$next" ]; then
            next=$((SECONDS - began + SECONDS_BETWEEN_SIGNS))
            say "    $(clock $((SECONDS - began)))  $last"
        fi
        sleep 0.2
    done
    if [ -t 1 ]; then
        printf '\r\033[K'
    fi
}

# Adds up what a log says was tested: cargo's own result lines and lines of the form 'N passed, N failed'.
# A test that was ignored was not run, so it counts as failed. Prints: passed failed.
count_tests() {
    awk '
        /^test result: / {
            for (i = 2; i <= NF; i++) {
                if ($i == "passed;") passed += $(i - 1)
                if ($i == "failed;" || $i == "ignored;") failed += $(i - 1)
            }
        }
        /^[0-9]+ passed, [0-9]+ failed$/ { passed += $1; failed += $3 }
        END { print passed + 0, failed + 0 }
    ' "$1"
}

# A stage without tests of its own is one check. One that broke off without a failed test has failed once.
record() {
    local name=$1 log=$2 status=$3 time=$4 passed failed missing verdict=ok
    read -r passed failed < <(count_tests "$log")
    if [ "$status" = 0 ] && [ $((passed + failed)) = 0 ]; then
        passed=1
    elif [ "$status" != 0 ] && [ "$failed" = 0 ]; then
        failed=1
    fi
    if [ "$failed" -gt 0 ]; then
        verdict=FAILED
        failed_stages+=("$name")
        say "──── $name: the end of $log"
        tail -n 60 "$log"
        say "────"
    fi
    while read -r _ _ missing; do
        not_run+=("$name: $missing")
    done < <(grep '^NOT RUN ' "$log")
    passed_in_all=$((passed_in_all + passed))
    failed_in_all=$((failed_in_all + failed))
    table+=("$(printf '%-12s %-7s %7d %7d %7s' "$name" "$verdict" "$passed" "$failed" "$(clock "$time")")")
    say "$(printf '%-7s %-12s %4d passed %4d failed %7s' "$verdict" "$name" "$passed" "$failed" "$(clock "$time")")"
}

close_with_table() {
    say
    printf '%-12s %-7s %7s %7s %7s\n' stage result passed failed time
    printf '%s\n' "${table[@]}"
    printf '%-12s %-7s %7s %7s %7s\n' "in all" "" "$passed_in_all" "$failed_in_all" "$(clock "$SECONDS")"
    list_missing
    if [ ${#not_run[@]} -gt 0 ]; then
        printf 'Not run: %s\n' "${not_run[@]}"
    fi
    if [ ${#failed_stages[@]} -gt 0 ]; then
        say "Failed: ${failed_stages[*]} (once more, alone: ./test ${failed_stages[*]})"
    fi
    say "$passed_in_all passed, $failed_in_all failed"
    [ "$failed_in_all" = 0 ]
}
