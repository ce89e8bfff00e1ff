-- the trigger names what may change of a release, and what is written once; every other column, a new one too, never
-- changes. A column that may change needs another trigger line, and this function stays as it is
drop trigger signoff_releases_one_way on signoff_releases;

create or replace function signoff_guard_release() returns trigger language plpgsql as $$
declare
    says text;
    is_over boolean := old.lapsed_at is not null or old.ended_at is not null;
    may_change text[] := string_to_array(tg_argv[0], ' ');
    once text[] := string_to_array(tg_argv[1], ' ');
    words text[] := array['because', 'suspended_because', 'words_out_at'];
    before jsonb := to_jsonb(old);
    after jsonb := to_jsonb(new);
    again text := (
        select c from unnest(once) c where before ->> c is not null and before -> c is distinct from after -> c limit 1
    );
begin
    if old.words_out_at is distinct from new.words_out_at then
        if old.words_out_at is null and after - words = before - words
            and exists (
                select 1 from retention_items i join signoff_lapses l on l.id = i.record_id
                where l.release_id = old.id and i.kind = 'LAPSES' and i.state = 'DONE'
                    and i.transaction_mark = transaction_id()
            ) then
            return new;
        end if;
        says := 'its words go only by a disposal that is written down';
    elsif after - may_change - once <> before - may_change - once then
        says := 'what it is about never changes';
    elsif again is not null then
        says := again || ' is written once';
    elsif is_over and old.attendant_id is distinct from new.attendant_id then
        says := 'it is over, and nobody takes its e-stop';
    elsif is_over and old.suspended_because is distinct from new.suspended_because then
        says := 'it is over, and not suspended any more';
    elsif old.live is null and new.live is not null and (is_over or old.suspended_because is null) then
        says := 'only a suspended one holds again';
    end if;
    if says is not null then
        raise exception 'a release: %', says using errcode = '23514';
    end if;
    return new;
end $$;

create trigger signoff_releases_one_way before update on signoff_releases
    for each row execute function signoff_guard_release(
        'live attendant_id suspended_because words_out_at',
        'used_at run_through_at lapsed_at lapse_rule because ended_at');
