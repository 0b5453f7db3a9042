#!/usr/bin/env bash
# Everything there is to do with this project, on Linux with the .NET SDK: ./build.sh demo | test | samples | screens | publish | pictures | fuzz | books | bench | mutants | release
set -euo pipefail
cd "$(dirname "$0")"
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 LC_ALL=C.UTF-8

tagend=src/Tagend.Cli/bin/Release/net10.0/tagend
outside_tools=(pdftoppm rsvg-convert qpdf zbarimg mutool ZXingReader identify cupsd ippeveprinter lp dbus-daemon strace script /usr/share/X11/xkb/symbols/us mandoc zsh /usr/bin/time chromium chromium-headless-shell ffmpeg)
outside_packages=(poppler-utils librsvg2-bin qpdf zbar-tools mupdf-tools zxing-cpp-tools imagemagick cups cups-ipp-utils cups-client dbus strace bsdutils xkb-data mandoc zsh time chromium chromium-headless-shell ffmpeg)
sample_date=2026-03-14
export TAGEND_JOB_BOOK=none # demo orders are nobody's
demo_shop=out/demo-shop

build() { dotnet build Tagend.slnx -c Release -v quiet; }

# The demo's shop says of itself, and of its spools, what only a shop can know.
make_demo_shop() {
    rm -rf $demo_shop
    "$tagend" init $demo_shop --name "Demo string shop" --phone "555 0100" --post-diameter "1 in" > /dev/null
    cp demo-orders/shop/*.toml $demo_shop
}

demo() {
    dotnet build src/Tagend.Cli -c Release -v quiet
    make_demo_shop
    "$tagend" print demo-orders/demo.csv --templates $demo_shop --out out/demo --preview 100
    "$tagend" print demo-orders/demo-mm.csv --templates $demo_shop --units mm --paper a4 --out out/demo-mm --preview 100
    echo "The pages are in out/demo and out/demo-mm. A tag comes back:"
    "$tagend" recall out/demo/tags-02.png
}

# The tests hold the output to programs that are not ours. What cannot be installed is skipped, and counted.
install_outside_tools() { install_packages "the checks that need them" outside_tools outside_packages; }

# install_packages WHAT PROGRAMS PACKAGES: the packages whose program is missing; those beyond the programs come with them.
install_packages() {
    local -n programs=$2 packages=$3
    local missing=() package
    PATH="$PATH:/usr/sbin"
    for i in "${!packages[@]}"; do
        [ -n "${programs[$i]:-}" ] || { [ ${#missing[@]} -eq 0 ] || missing+=("${packages[$i]}"); continue; }
        command -v "${programs[$i]}" > /dev/null || [ -e "${programs[$i]}" ] || missing+=("${packages[$i]}")
    done
    [ ${#missing[@]} -eq 0 ] && return
    if [ "$(id -u)" -eq 0 ] && command -v apt-get > /dev/null; then
        apt-get update -qq > /dev/null || true
        apt_install() { DEBIAN_FRONTEND=noninteractive apt-get install -y -qq "$@" > /dev/null; }
        apt_install "${missing[@]}" || for package in "${missing[@]}"; do
            apt_install "$package" || echo "could not install $package: $1 will be skipped"
        done
    else
        echo "$1 will be skipped; to have them: sudo apt-get install ${missing[*]}"
    fi
}

# A third decoder of QR codes, in JavaScript.
install_jsqr() {
    [ -d out/jsqr/node_modules/jsqr ] && return
    { command -v npm && npm install --prefix out/jsqr --no-audit --no-fund jsqr@1.4.0 pngjs@7.0.0; } > /dev/null 2>&1 \
        || echo "the checks that need jsQR will be skipped: npm (with Node.js) does not install it here"
}

publish() {
    dotnet publish src/Tagend.Cli -c Release -r linux-x64 -o out/publish -v quiet
}

# The program against the same pages drawn by nothing but the library, and by other programs: out/bench.md.
bench() {
    local mode=${1:-usual} folder=out/bench
    if [ "$mode" != tiny ] && [ "$mode" != station ]; then
        bench_programs=(/usr/bin/time weasyprint chromium)
        bench_packages=(time weasyprint chromium python3-cairo python3-reportlab)
        install_packages "what is compared with them" bench_programs bench_packages
        mkdir -p $folder
        [ -d $folder/node_modules ] || npm install --silent --no-audit --no-fund --prefix $folder @myriaddreamin/typst-ts-node-compiler@0.7.0 \
            || echo "typst will be skipped: npm (with Node.js) does not install it here"
    fi
    publish
    dotnet publish tests/Tagend.Floor -c Release -r linux-x64 -o out/floor -v quiet
    dotnet publish tests/Tagend.WebFloor -c Release -r linux-x64 -o out/web-floor -v quiet
    dotnet build tests/Tagend.Benchmarks -c Release -v quiet
    tests/Tagend.Benchmarks/bin/Release/net10.0/Tagend.Benchmarks "$mode" out/publish/tagend out/floor/Tagend.Floor out/web-floor/Tagend.WebFloor $folder
}

samples() {
    dotnet build src/Tagend.Cli -c Release -v quiet
    make_demo_shop
    find output-samples -mindepth 1 -maxdepth 1 ! -name station -exec rm -r {} +
    "$tagend" print demo-orders/demo.csv --templates $demo_shop --out output-samples/demo --date $sample_date --preview 90
    "$tagend" print demo-orders/demo-mm.csv --templates $demo_shop --units mm --paper a4 --out output-samples/demo-mm --date $sample_date --preview 90
    "$tagend" print demo-orders/demo.csv --templates $demo_shop --order 1001 --only strips --out output-samples/strips --date $sample_date --preview 90
    for language in de es fr; do
        "$tagend" print demo-orders/demo.csv --templates $demo_shop --only sheets --order 1001 --order 1005 --order 1007 --paper a4 \
            --language $language --out "output-samples/sheets-$language" --date $sample_date
    done
    mkdir output-samples/text
    for pdf in output-samples/*/*.pdf; do
        pdftotext -layout -enc UTF-8 "$pdf" "output-samples/text/$(basename "$(dirname "$pdf")")-$(basename "$pdf" .pdf).txt"
    done
    "$tagend" check demo-orders/mistakes.csv --date $sample_date > output-samples/mistakes.txt 2>&1 || true
}

# The station's screens as the tests see them, into output-samples/station, and some of them into its page of the docs.
screens() {
    install_outside_tools
    dotnet build tests/Tagend.StationTests -c Release -v quiet
    rm -rf output-samples/station
    mkdir -p output-samples/station docs/station
    STATION_PICTURES="$PWD/output-samples/station" tests/Tagend.StationTests/bin/Release/net10.0/Tagend.StationTests -noColor
    local picture
    for picture in start-posts-tablet-light:start-posts orders-problems-desk-light:orders papers-desk-light:papers devices-code-tablet-light:devices \
        build-set-tablet-light:build scan-superseded-phone-light:scan-superseded book-piece-desk-light:book; do
        cp "output-samples/station/${picture%%:*}.png" "docs/station/${picture##*:}.png"
    done
    rm output-samples/station/*-{desk-dark,phone-light,tablet-dark}.png # each screen stays in three sizes, light or dark
}

# Hard pictures of codes, read by us and by four decoders that are not ours. Seeds 1, 3 and 7 are for choosing, 11 is for scoring.
pictures() {
    local seed=${1:-11} modules=out/pictures/decoders
    install_outside_tools
    if [ ! -d $modules/node_modules/zxing-wasm ]; then
        mkdir -p $modules
        npm install --silent --no-audit --no-fund --prefix $modules zxing-wasm@3.1.4 jsqr@1.4.0 jpeg-js@0.4.4 pngjs@7.0.0 \
            || { echo "needs npm, for the decoders zxing-wasm and jsQR"; exit 1; }
    fi
    dotnet build tests/Tagend.Pictures -c Release -v quiet
    tests/Tagend.Pictures/bin/Release/net10.0/Tagend.Pictures "out/pictures/seed-$seed" "$seed" 1 "$modules" ${2:+"$2"}
}

# Spoiled inputs for every reader: no crash, no run over a second, no wrong recall. out/fuzz has the inputs of faults, and
# after a crash the number of the run each thread was at.
fuzz() {
    dotnet build tests/Tagend.Fuzz -c Release -v quiet
    tests/Tagend.Fuzz/bin/Release/net10.0/Tagend.Fuzz "${1:-1}" "${2:-100000}" "${@:3}"
}

# Job books under many programs, kills and restarts of their server, and searches among a million jobs: every acknowledged writing
# is there once. "short" takes a minute, "long" an hour or two and 2 GB of the temporary folder.
books() {
    dotnet build tests/Tagend.Books -c Release -v quiet
    tests/Tagend.Books/bin/Release/net10.0/Tagend.Books "${1:-short}" "${@:2}"
}

# Faults planted into a folder of Core (Measures, Orders, Specs or Tags) or into the Fits of Jobs that its tests should notice,
# and the share they do: out/mutants. FILES narrows it, such as "**/Specs/Twist.cs". MUTANT_WORKERS=1 for a quiet machine.
mutants() {
    local area=$1 tests=Tagend.CoreTests
    [ "$area" != Fits ] || tests=Tagend.Tests
    dotnet tool restore > /dev/null
    (cd "tests/$tests" && MUTANT_AREA=$area dotnet stryker --mutate "${2:-**/$area/**/*.cs}" \
        --concurrency "${MUTANT_WORKERS:-2}" --output "../../out/mutants/$area")
}

test_all() {
    install_outside_tools
    install_jsqr
    build
    dotnet format whitespace . --folder --verify-no-changes --exclude out output-samples || exit 1 # all else of style is in the build
    if command -v clang > /dev/null || command -v gcc > /dev/null; then
        publish
        export TAGEND_PROGRAM="$PWD/out/publish/tagend"
    else
        echo "no C linker here: the program is tested as built, not as published ahead of time"
    fi
    local passed=0 failed=0 skipped=0
    for project in Tagend.CoreTests Tagend.Tests Tagend.PaperTests Tagend.StationTests; do
        local log="out/$project.log"
        "tests/$project/bin/Release/net10.0/$project" -noColor 2>&1 | tee "$log" | grep -E "\[(FAIL|SKIP)\]|^ {6}|Total:" || true
        local line
        line=$(grep -E "Total: [0-9]+, Errors" "$log" | tail -1) || { echo "$project did not finish"; exit 1; }
        number() { sed -E "s/.*$1: ([0-9]+).*/\1/" <<< "$line"; }
        local bad=$(($(number Failed) + $(number Errors)))
        failed=$((failed + bad))
        skipped=$((skipped + $(number Skipped)))
        passed=$((passed + $(number Total) - bad - $(number Skipped)))
    done
    echo "$passed passed, $failed failed, $skipped skipped"
    [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
}

mkdir -p out
case "${1:-}" in
    demo) demo ;;
    test) test_all ;;
    samples) samples ;;
    screens) screens ;;
    publish) publish ;;
    pictures) pictures "${@:2}" ;;
    fuzz) fuzz "${@:2}" ;;
    books) books "${@:2}" ;;
    bench) bench "${@:2}" ;;
    mutants) mutants "${2:?Measures, Orders, Specs, Tags or Fits}" "${@:3}" ;;
    release) bash ./release.sh ;;
    *) echo "usage: ./build.sh demo | test | samples | screens | publish | pictures [SEED] [DECODER] | fuzz [SEED] [RUNS] [TARGET] [RUN] | books [short|long [SEED [PART]]] | bench [tiny|long|station] | mutants AREA [FILES] | release"; exit 2 ;;
esac
