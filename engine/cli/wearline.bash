# Completion of `wearline` in bash.

_wearline() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]} options
  if [ "$COMP_CWORD" = 1 ]; then
    mapfile -t COMPREPLY < <(compgen -W 'check read recognize letter dates law batch validate --help --version --verbose' -- "$word")
    return
  fi
  case $before in
  --rules) mapfile -t COMPREPLY < <(compgen -d -- "$word"); return ;;
  --language) mapfile -t COMPREPLY < <(compgen -W 'en es' -- "$word"); return ;;
  --format) mapfile -t COMPREPLY < <(compgen -W '1 2' -- "$word"); return ;;
  --today | --kind | --threads | --place) return ;;
  esac
  case $command in
  check) options='--json --today --format --rules --help' ;;
  read) options='--json --language --place --format --rules --help' ;;
  recognize) options='--json --format --rules --help' ;;
  letter) options='--json --kind --language --today --format --rules --help' ;;
  dates) options='--json --ics --today --format --rules --help' ;;
  law) options='--json --format --rules --help' ;;
  batch) options='--threads --today --format --rules --help' ;;
  validate) options='--json --format --rules --help' ;;
  esac
  case $word in
  -*) mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word") ;;
  *) mapfile -t COMPREPLY < <(compgen -f -- "$word") ;;
  esac
}
complete -o filenames -F _wearline wearline
