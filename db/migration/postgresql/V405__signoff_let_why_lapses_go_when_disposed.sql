-- why something lapsed may be taken out at the end of its time, in the transaction that says so
drop trigger signoff_lapses_immutable on signoff_lapses;

create trigger signoff_lapses_words_out_only before update or delete on signoff_lapses
    for each row execute function signoff_refuse_unless_words_out('LAPSES', 'id', 'because');

create or replace function signoff_guard_release() returns trigger language plpgsql as $$
declare
    says text;
    is_over boolean := old.lapsed_at is not null or old.ended_at is not null;
begin
    if old.words_out_at is distinct from new.words_out_at then
        if old.words_out_at is null
            and to_jsonb(new) - array['because', 'suspended_because', 'words_out_at']
                = to_jsonb(old) - array['because', 'suspended_because', 'words_out_at']
            and exists (
                select 1 from retention_items i join signoff_lapses l on l.id = i.record_id
                where l.release_id = old.id and i.kind = 'LAPSES' and i.state = 'DONE'
                    and i.transaction_mark = transaction_id()
            ) then
            return new;
        end if;
        says := 'its words go only by a disposal that is written down';
    elsif (old.id, old.booking_id, old.sheet_id, old.cell_id, old.cell_version, old.revision_id,
            old.program_sha256, old.declaration_sha256, old.tool, old.payload_kg, old.operator_id,
            old.releaser_id, old.code, old.first_run, old.pass_limit, old.issued_at, old.start_by,
            old.window_end, old.last_revision)
        is distinct from
        (new.id, new.booking_id, new.sheet_id, new.cell_id, new.cell_version, new.revision_id,
            new.program_sha256, new.declaration_sha256, new.tool, new.payload_kg, new.operator_id,
            new.releaser_id, new.code, new.first_run, new.pass_limit, new.issued_at, new.start_by,
            new.window_end, new.last_revision) then
        says := 'what it is about never changes';
    elsif old.used_at is not null and old.used_at is distinct from new.used_at then
        says := 'used_at is written once';
    elsif old.run_through_at is not null and old.run_through_at is distinct from new.run_through_at then
        says := 'run_through_at is written once';
    elsif old.lapsed_at is not null and old.lapsed_at is distinct from new.lapsed_at then
        says := 'lapsed_at is written once';
    elsif old.lapse_rule is not null and old.lapse_rule is distinct from new.lapse_rule then
        says := 'lapse_rule is written once';
    elsif old.because is not null and old.because is distinct from new.because then
        says := 'because is written once';
    elsif old.ended_at is not null and old.ended_at is distinct from new.ended_at then
        says := 'ended_at is written once';
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
